import { ticks } from '@trimwell/geometry';
import {
  type CopiedPieces,
  type Edit,
  everyPiece,
  everySource,
  type Face,
  freeId,
  MOST_MIXES,
  MOST_PAPERS,
  MOST_PIECES,
  MOST_PUNCHES,
  type Piece,
  rulerStep,
  type Sketch,
} from '@trimwell/sketch';
import { nextName, stemOf } from './copy-commands.js';
import { pastedPlaces } from './pasted-places.js';
import type { Command } from './state.js';

/**
 * What of a record says nothing about what it is: its id, what this maker happens to have of it, and the photograph, which is
 * not copied.
 */
const BY_THE_WAY: ReadonlySet<string> = new Set(['id', 'sheets', 'price']);
const NOT_COPIED: ReadonlySet<string> = new Set(['photo']);

/** A record's text, the same for records that are the same but for their ids and stock, whatever the order of keys. */
function fingerprint(record: object): string {
  const sorted = (value: unknown): unknown =>
    typeof value === 'object' && value !== null && !Array.isArray(value)
      ? Object.fromEntries(
          Object.entries(value)
            .filter(([key]) => !NOT_COPIED.has(key))
            .toSorted(([a], [b]) => (a < b ? -1 : 1))
            .map(([key, inner]) => [key, sorted(inner)]),
        )
      : value;
  const told = Object.entries(record).filter(([key]) => !BY_THE_WAY.has(key));
  return JSON.stringify(sorted(Object.fromEntries(told)));
}

/** Something that is told apart by its id. */
interface Named {
  readonly id: string;
}

/** For every copied record the id that it has in the sketch, and those that must be added, under free ids. */
function settle<R extends Named>(
  copied: readonly R[],
  there: readonly R[],
  taken: readonly Named[],
): { readonly ids: ReadonlyMap<string, string>; readonly fresh: readonly R[] } {
  const known = new Map<string, string[]>();
  const know = (record: R): void => {
    const print = fingerprint(record);
    known.set(print, [...(known.get(print) ?? []), record.id]);
  };
  there.forEach(know);
  const used = [...taken];
  const ids = new Map<string, string>();
  const fresh: R[] = [];
  for (const record of copied) {
    // Of several that are alike, the one of the same id: two sheets may differ in nothing but their photographs.
    const alike = known.get(fingerprint(record)) ?? [];
    const same = alike.includes(record.id) ? record.id : alike[0];
    const free = !used.some(({ id }) => id === record.id);
    const id = same ?? (free ? record.id : freeId(stemOf(record.id), used));
    ids.set(record.id, id);
    if (same !== undefined) continue;
    const added = { ...record, id };
    fresh.push(added);
    used.push(added);
    know(added);
  }
  return { ids, fresh };
}

function placeText({ face, shape, x, y, width, height, tilt }: Piece): string {
  return [face, shape, x, y, width, height, tilt].join(' ');
}

/** How far the copied pieces are shifted so that none lies exactly on one that is like it: two marks, or more of them. */
function freeShift(sketch: Sketch, pieces: readonly Piece[]): number {
  const taken = new Set(sketch.pieces.map(placeText));
  const step = 2 * rulerStep(sketch.unit);
  for (let shift = 0; ; shift += step) {
    const moved = pieces.map((piece) => ({ ...piece, x: ticks(piece.x + shift), y: ticks(piece.y + shift) }));
    if (!moved.some((piece) => taken.has(placeText(piece)))) return shift;
  }
}

interface Pasting {
  readonly edits: readonly Edit[];
  readonly selection: readonly string[];
}

function pasting(sketch: Sketch, face: Face, copied: CopiedPieces): Pasting | null {
  const papers = settle(copied.papers, sketch.papers, everySource(sketch));
  const paperOf = (id: string): string => papers.ids.get(id) ?? id;
  const named = copied.mixes.map((mix) => ({ ...mix, papers: mix.papers.map(paperOf) }));
  const mixes = settle(named, sketch.mixes, [...everySource(sketch), ...papers.fresh]);
  const punches = settle(copied.punches, sketch.punches, sketch.punches);
  const full =
    sketch.pieces.length + copied.pieces.length > MOST_PIECES ||
    sketch.papers.length + papers.fresh.length > MOST_PAPERS ||
    sketch.mixes.length + mixes.fresh.length > MOST_MIXES ||
    sketch.punches.length + punches.fresh.length > MOST_PUNCHES;
  if (full) return null;
  const onFace = pastedPlaces(
    copied.pieces.map((piece) => ({ ...piece, face })),
    copied.unit,
    sketch,
  );
  const shift = freeShift(sketch, onFace);
  const taken = [...everyPiece(sketch)];
  const names = [...sketch.pieces];
  const ids = new Map<string, string>();
  const pieces = onFace.map((piece): Piece => {
    const free = !taken.some(({ id }) => id === piece.id);
    const { mats: _mats, locked: _locked, hidden: _hidden, ...loose } = piece;
    const pasted: Piece = {
      ...loose,
      id: free ? piece.id : freeId(stemOf(piece.id), taken),
      name: names.some(({ name }) => name === piece.name) ? nextName(piece.name, names) : piece.name,
      x: ticks(piece.x + shift),
      y: ticks(piece.y + shift),
      from: mixes.ids.get(piece.from) ?? paperOf(piece.from),
      punched: Object.fromEntries(
        Object.entries(piece.punched).map(([edge, punch]) => [edge, punches.ids.get(punch ?? '') ?? punch]),
      ),
    };
    ids.set(piece.id, pasted.id);
    taken.push(pasted);
    names.push(pasted);
    return pasted;
  });
  const mats = copied.pieces.flatMap((piece): readonly Edit[] => {
    const [mat, inner] = [ids.get(piece.id), piece.mats && ids.get(piece.mats.piece)];
    return piece.mats && mat && inner ? [{ do: 'mat', piece: mat, mats: { ...piece.mats, piece: inner } }] : [];
  });
  return {
    edits: [
      ...papers.fresh.map((paper): Edit => ({ do: 'set-paper', paper })),
      ...mixes.fresh.map((mix): Edit => ({ do: 'set-mix', mix })),
      ...punches.fresh.map((punch): Edit => ({ do: 'set-punch', punch })),
      ...pieces.map((piece): Edit => ({ do: 'add-piece', piece })),
      ...mats,
    ],
    selection: pieces.map(({ id }) => id),
  };
}

/**
 * Glues copied pieces on top of the face that is shown and selects them: in their old places (between inches and millimetres
 * on the nearest marks, and never off the card) or, where one would lie exactly on another like it, all of them two marks
 * farther to the right and down. Papers, mixes and punches
 * that the sketch has already (the same in all but id, stock and price) are used; others are added. Does not apply when
 * the sketch would become too full.
 */
export function paste(copied: CopiedPieces): Command {
  return ({ sketch, face }, dispatch, at = 0) => {
    const made = pasting(sketch, face, copied);
    if (!made) return false;
    dispatch?.({ event: 'piece.paste', ...made, at });
    return true;
  };
}

/** Says that a sketch holds no more; for when `paste` does not apply. */
export const TOO_FULL = `A sketch holds at most ${MOST_PIECES} pieces, ${MOST_PAPERS} papers, ${MOST_MIXES} mixes and ${MOST_PUNCHES} punches.`;
