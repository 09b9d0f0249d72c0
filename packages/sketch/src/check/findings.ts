import { applyEdits, EditError } from '../edit/apply-edit.js';
import type { Edit, Piece, Sketch } from '../model/sketch.js';
import { affectedPieces } from './affected.js';
import { type CheckField, checkField, fieldOf } from './check-field.js';
import { cornersNotConcentric } from './corners-not-concentric.js';
import {
  type Check,
  type Finding,
  type FindingCode,
  kindOf,
  SEVERITIES,
  type Severity,
  type Suspect,
} from './finding.js';
import { stillFits } from './fits-sheet.js';
import { hiddenPiece } from './hidden-piece.js';
import { matOutOfTrue } from './mat-out-of-true.js';
import { offTheCard } from './off-the-card.js';
import { offTheRuler } from './off-the-ruler.js';
import { keptOff, overlapTooSmall } from './overlap-too-small.js';
import { partRepeats } from './part-repeats.js';
import { partsPieces } from './parted.js';
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
  /** How bad it is at worst that a way to mend something else brings what it finds. */
  readonly worst: number;
  /**
   * `alone`: it looks at the piece, its papers and the card only; `up`: at what is glued over it too, and finds the more the more
   * that hides; `among`: at all that lies there; `down`: at all that bears it as well.
   */
  readonly looks: 'alone' | 'up' | 'among' | 'down';
  readonly check: Check;
}

const looking = (code: FindingCode, worst: Severity, looks: Looking['looks'], check: Check): Looking => ({
  code,
  worst: SEVERITIES.indexOf(worst),
  looks,
  check,
});

/** Every check, in the order in which findings of one piece and one severity are told. */
const CHECKS: readonly Looking[] = [
  looking('radius-too-large', 'stops the build', 'alone', radiusTooLarge),
  looking('punch-too-deep', 'stops the build', 'alone', punchTooDeep),
  looking('print-must-turn', 'stops the build', 'alone', printMustTurn),
  looking('off-the-card', 'looks wrong', 'alone', offTheCard),
  looking('hidden', 'looks wrong', 'up', hiddenPiece),
  looking('print-on-its-side', 'looks wrong', 'alone', printOnItsSide),
  looking('mat-out-of-true', 'looks wrong', 'among', matOutOfTrue),
  looking('uneven-reveal', 'looks wrong', 'among', unevenReveal),
  looking('corners-not-concentric', 'looks wrong', 'among', cornersNotConcentric),
  looking('short-punched-edge', 'looks wrong', 'alone', shortPunchedEdge),
  looking('part-repeats', 'looks wrong', 'alone', partRepeats),
  looking('overlap-too-small', 'looks wrong', 'down', overlapTooSmall),
  looking('too-narrow', 'worth knowing', 'alone', tooNarrow),
  looking('off-the-ruler', 'worth knowing', 'among', offTheRuler),
  looking('place-off-the-ruler', 'worth knowing', 'alone', placeOffTheRuler),
  looking('punched-edge-covered', 'looks wrong', 'up', punchedEdgeCovered),
];

const DOWN = CHECKS.filter(({ looks }) => looks === 'down');

function suspectsAt(field: CheckField, pieces: readonly Piece[]): readonly Suspect[] {
  return pieces.flatMap((piece) => CHECKS.flatMap(({ check }) => check(field, piece) ?? []));
}

function rank({ severity }: Pick<Suspect, 'severity'>): number {
  return SEVERITIES.indexOf(severity);
}

/** How bad it is that a way to mend something brings a finding: that a punched edge is covered is worth knowing, to cover one looks wrong. */
function harm(suspect: Suspect): number {
  return suspect.code === 'punched-edge-covered' ? SEVERITIES.indexOf('looks wrong') : rank(suspect);
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

/** How bad what was found before was, by piece and kind; the most important ranks are the lowest. */
type Ranks = ReadonlyMap<string, ReadonlyMap<string, number>>;

function ranksOf(found: readonly Suspect[]): Ranks {
  const ranks = new Map<string, Map<string, number>>();
  for (const suspect of found) {
    const ofPiece = ranks.get(suspect.piece) ?? new Map<string, number>();
    ranks.set(suspect.piece, ofPiece.set(kindOf(suspect), rank(suspect)));
  }
  return ranks;
}

/** What was found before, the field in which it was found, and what foam kept from being found. */
interface Found {
  readonly field: CheckField;
  readonly ranks: Ranks;
  readonly kept: ReadonlySet<string>;
}

/** True when `sketch` no longer has `suspect`, and nothing new that is as bad; only what can differ is looked at again. */
function mends({ field, ranks, kept }: Found, suspect: Suspect, edits: readonly Edit[], sketch: Sketch): boolean {
  const after = checkField(sketch, field.covers);
  const unchanged = new Set(field.sketch.pieces);
  if (!sketch.pieces.every((piece) => unchanged.has(piece) || stillFits(field.sketch, sketch, piece))) return false;
  const affected = affectedPieces(field, after, edits);
  const wasAsBad = (piece: string, kind: string, now: number): boolean =>
    (ranks.get(piece)?.get(kind) ?? Infinity) <= now;
  const harmless = (other: Suspect): boolean =>
    !(other.piece === suspect.piece && kindOf(other) === kindOf(suspect)) &&
    (harm(other) > rank(suspect) || wasAsBad(other.piece, kindOf(other), rank(other)));
  // What could be found would change nothing: it is never as bad, or it was found at this very piece before.
  const needless = ({ code, worst, looks }: Looking, piece: Piece): boolean => {
    if (code === suspect.code && piece.id === suspect.piece) return false;
    if (looks === 'alone' && affected && unchanged.has(piece)) return true;
    if (looks === 'up' && affected && !affected.covered.has(piece.id)) return true;
    return worst > rank(suspect) || wasAsBad(piece.id, code, worst);
  };
  const passes = (each: Looking, piece: Piece): boolean => {
    if (needless(each, piece)) return true;
    const found = each.check(after, piece);
    return found === null || ('code' in found ? harmless(found) : found.every(harmless));
  };
  // Whether it is still found is asked first: most ways that fail fail there.
  const own = sketch.pieces.find(({ id }) => id === suspect.piece);
  if (own && !CHECKS.every((each) => each.code !== suspect.code || passes(each, own))) return false;
  const near = ({ id }: Piece): boolean => affected === null || affected.pieces.has(id);
  const sound = (pieces: readonly Piece[], checks: readonly Looking[]): boolean =>
    pieces.every((piece) => checks.every((each) => passes(each, piece)));
  if (!sound(sketch.pieces.filter(near), CHECKS) || partsPieces(field, after)) return false;
  // What lifts a piece may lie far from it.
  return sound(
    sketch.pieces.filter(({ id }) => kept.has(id)),
    DOWN,
  );
}

/** By sketch: sketches are never changed, and several ask what was found in the same one. */
const found = new WeakMap<Sketch, readonly Suspect[]>();

/** What `checkSketch` finds, in gluing order, with all the ways to mend it that could be tried. */
export function suspectsIn(sketch: Sketch): readonly Suspect[] {
  const suspects = found.get(sketch) ?? suspectsAt(fieldOf(sketch), sketch.pieces);
  found.set(sketch, suspects);
  return suspects;
}

/** Whether `after`, in which `suspect` is mended, is fine for whoever looks at more than its pieces. */
export type Allows = (after: Sketch, suspect: Suspect) => boolean;

/**
 * Everything to watch in a sketch, worst first, then in gluing order. A fix is tried before it is offered: it takes its
 * finding away, brings none that is as bad, and `allows` lets it, or it is left out.
 */
export function checkSketch(sketch: Sketch, allows: Allows = () => true): readonly Finding[] {
  const [field, suspects] = [fieldOf(sketch), suspectsIn(sketch)];
  const before: Found = { field, ranks: ranksOf(suspects), kept: new Set(keptOff(field).map(({ id }) => id)) };
  const mended = (suspect: Suspect, edits: readonly Edit[]): boolean => {
    const after = tried(sketch, edits);
    return after !== null && mends(before, suspect, edits, after) && allows(after, suspect);
  };
  return SEVERITIES.flatMap((severity) => suspects.filter((suspect) => suspect.severity === severity)).map(
    (suspect): Finding => {
      const { fixes, ...finding } = suspect;
      return { ...finding, fix: fixes.find((edits) => mended(suspect, edits)) ?? [] };
    },
  );
}
