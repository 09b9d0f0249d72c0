import { applyEdits, EditError } from '../edit/apply-edit.js';
import type { Edit, Piece, Sketch } from '../model/sketch.js';
import { affectedPieces } from './affected.js';
import { type CheckField, checkField } from './check-field.js';
import { cornersNotConcentric } from './corners-not-concentric.js';
import { type Check, type Finding, type FindingCode, SEVERITIES, type Severity, type Suspect } from './finding.js';
import { stillFits } from './fits-sheet.js';
import { hiddenPiece } from './hidden-piece.js';
import { matOutOfTrue } from './mat-out-of-true.js';
import { offTheCard } from './off-the-card.js';
import { offTheRuler } from './off-the-ruler.js';
import { overlapTooSmall } from './overlap-too-small.js';
import { partRepeats } from './part-repeats.js';
import { placeOffTheRuler } from './place-off-the-ruler.js';
import { printMustTurn } from './print-must-turn.js';
import { printOnItsSide } from './print-on-its-side.js';
import { punchTooDeep } from './punch-too-deep.js';
import { punchedEdgeCovered } from './punched-edge-covered.js';
import { radiusTooLarge } from './radius-too-large.js';
import { shortPunchedEdge } from './short-punched-edge.js';
import { tooNarrow } from './too-narrow.js';
import { unevenReveal } from './uneven-reveal.js';

interface Looking {
  readonly code: FindingCode;
  /** How bad what it finds is at worst. */
  readonly worst: Severity;
  readonly check: Check;
}

const looking = (code: FindingCode, worst: Severity, check: Check): Looking => ({ code, worst, check });

/** Every check, in the order in which findings of one piece and one severity are told. */
const CHECKS: readonly Looking[] = [
  looking('radius-too-large', 'stops the build', radiusTooLarge),
  looking('punch-too-deep', 'stops the build', punchTooDeep),
  looking('print-must-turn', 'stops the build', printMustTurn),
  looking('off-the-card', 'looks wrong', offTheCard),
  looking('hidden', 'looks wrong', hiddenPiece),
  looking('print-on-its-side', 'looks wrong', printOnItsSide),
  looking('mat-out-of-true', 'looks wrong', matOutOfTrue),
  looking('uneven-reveal', 'looks wrong', unevenReveal),
  looking('corners-not-concentric', 'looks wrong', cornersNotConcentric),
  looking('short-punched-edge', 'looks wrong', shortPunchedEdge),
  looking('part-repeats', 'looks wrong', partRepeats),
  looking('overlap-too-small', 'looks wrong', overlapTooSmall),
  looking('too-narrow', 'worth knowing', tooNarrow),
  looking('off-the-ruler', 'worth knowing', offTheRuler),
  looking('place-off-the-ruler', 'worth knowing', placeOffTheRuler),
  looking('punched-edge-covered', 'worth knowing', punchedEdgeCovered),
];

function suspectsAt(field: CheckField, pieces: readonly Piece[]): readonly Suspect[] {
  return pieces.flatMap((piece) => CHECKS.flatMap(({ check }) => check(field, piece) ?? []));
}

/** Two findings of one key are the same one, before and after a change. */
function keyOf({ code, piece, edge }: Pick<Suspect, 'code' | 'piece' | 'edge'>): string {
  return `${code} ${piece} ${edge ?? ''}`;
}

function rank({ severity }: Pick<Suspect, 'severity'>): number {
  return SEVERITIES.indexOf(severity);
}

/** `sketch` after `edits`, or null when they cannot be made. */
function tried(sketch: Sketch, edits: readonly Edit[]): Sketch | null {
  try {
    return applyEdits(sketch, edits);
  } catch (error) {
    if (error instanceof EditError) return null;
    throw error;
  }
}

/** What was found before, by key with how bad it was, and the field in which it was found. */
interface Found {
  readonly field: CheckField;
  readonly ranks: ReadonlyMap<string, number>;
}

/** True when `edits` take `suspect` away and bring nothing new that is as bad; only what they can affect is looked at again. */
function mends({ field, ranks }: Found, suspect: Suspect, edits: readonly Edit[]): boolean {
  const sketch = tried(field.sketch, edits);
  if (!sketch) return false;
  const after = checkField(sketch, field.covers);
  const affected = affectedPieces(field, after, edits);
  const looked = affected ? sketch.pieces.filter(({ id }) => affected.has(id)) : sketch.pieces;
  // The most important ranks are the lowest.
  const wasAsBad = (key: string, now: number): boolean => (ranks.get(key) ?? Infinity) <= now;
  const harmless = (other: Suspect): boolean =>
    keyOf(other) !== keyOf(suspect) && (rank(other) > rank(suspect) || wasAsBad(keyOf(other), rank(other)));
  // What could be found would change nothing: it is never as bad, or it was found at this very piece before.
  const needless = ({ code, worst }: Looking, { id }: Piece): boolean =>
    !(code === suspect.code && id === suspect.piece) &&
    (rank({ severity: worst }) > rank(suspect) || wasAsBad(keyOf({ code, piece: id }), rank({ severity: worst })));
  if (!sketch.pieces.every((piece) => stillFits(field.sketch, sketch, piece))) return false;
  return looked.every((piece) =>
    CHECKS.every((each) => {
      if (needless(each, piece)) return true;
      const other = each.check(after, piece);
      return other === null || harmless(other);
    }),
  );
}

/**
 * Everything to watch in a sketch, worst first, then in gluing order. A fix is tried before it is offered: it takes its
 * finding away and brings none that is as bad, or it is left out.
 */
export function checkSketch(sketch: Sketch): readonly Finding[] {
  const field = checkField(sketch);
  const found = suspectsAt(field, sketch.pieces);
  const before: Found = { field, ranks: new Map(found.map((each) => [keyOf(each), rank(each)])) };
  return SEVERITIES.flatMap((severity) => found.filter((suspect) => suspect.severity === severity)).map(
    (suspect): Finding => {
      const { fixes, ...finding } = suspect;
      return { ...finding, fix: fixes.find((edits) => mends(before, suspect, edits)) ?? [] };
    },
  );
}
