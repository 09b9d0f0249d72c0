import { ticks } from '@trimwell/geometry';
import { findBroken } from '../model/invariants.js';
import { type Problem, problemAt } from '../model/problem.js';
import type { Edit, Piece, Sketch } from '../model/sketch.js';
import { followMats, isConcentric, mattedCorners, mattedPlace } from './mats.js';

/** Thrown when an edit cannot be applied to a sketch; nothing was changed. */
export class EditError extends RangeError {
  override readonly name = 'EditError';
  constructor(readonly problems: readonly Problem[]) {
    super(problems.map((problem) => problem.message).join('\n'));
  }
}

function requireSound(sketch: Sketch): void {
  const broken = findBroken(sketch);
  if (broken.length > 0) throw new EditError(broken);
}

type EditOf<D extends Edit['do']> = Extract<Edit, { readonly do: D }>;
type Place = Pick<Piece, 'x' | 'y' | 'width' | 'height'>;

function refuse(edit: Edit, field: string, value: unknown, allowed: string): never {
  throw new EditError([problemAt('edit-refused', [edit.do, field], value, allowed)]);
}

function pieceOf(sketch: Sketch, edit: Edit & { readonly piece: string }): Piece {
  const found = sketch.pieces.find((piece) => piece.id === edit.piece);
  return (
    found ??
    refuse(edit, 'piece', edit.piece, `a piece of the sketch: ${sketch.pieces.map((piece) => piece.id).join(', ')}`)
  );
}

/** Puts `changed` in place of the piece with its id, and lets its mats follow. */
function withPiece(sketch: Sketch, changed: Piece): Sketch {
  const pieces = sketch.pieces.map((piece) => (piece.id === changed.id ? changed : piece));
  return { ...sketch, pieces: followMats(pieces, changed.id) };
}

/**
 * Puts a piece at `place`. A mat has no place of its own: moving or resizing it moves or resizes what it mats, so that
 * the reveal stays even.
 */
function placed(sketch: Sketch, edit: Edit, piece: Piece, place: Place): Sketch {
  if (!piece.mats) return withPiece(sketch, { ...piece, ...place });
  const { piece: innerId, reveal } = piece.mats;
  const inner = sketch.pieces.find((other) => other.id === innerId);
  const innerPlace = mattedPlace(place, reveal);
  if (!inner || !innerPlace) return refuse(edit, 'width', place.width, 'a mat larger than twice its reveal');
  return placed(sketch, edit, inner, innerPlace);
}

/**
 * Rounds a piece. A concentric mat has no corners of its own: rounding it rounds what it mats, so that the reveal stays
 * even round the corners.
 */
function rounded(sketch: Sketch, edit: EditOf<'round'>, piece: Piece, corners: Piece['corners']): Sketch {
  const inner = isConcentric(piece) && sketch.pieces.find((other) => other.id === piece.mats?.piece);
  if (!inner || !piece.mats) return withPiece(sketch, { ...piece, corners });
  const { reveal } = piece.mats;
  const within = mattedCorners(corners, reveal);
  if (within) return rounded(sketch, edit, inner, within);
  const [corner, radius] = wrongRadius(corners, reveal);
  return refuse(edit, `corners.${corner}`, radius, 'square, or a radius larger than the reveal of a concentric mat');
}

/** The first corner that is rounded by no more than `reveal`. */
function wrongRadius(corners: Piece['corners'], reveal: number): readonly [string, number] {
  return Object.entries(corners).find(([, radius]) => radius > 0 && radius <= reveal) ?? ['tl', corners.tl];
}

function replaced<T extends { readonly id: string }>(records: readonly T[], record: T): readonly T[] {
  return records.some((other) => other.id === record.id)
    ? records.map((other) => (other.id === record.id ? record : other))
    : [...records, record];
}

function without<T extends { readonly id: string }>(
  edit: Edit,
  field: string,
  records: readonly T[],
  id: string,
): readonly T[] {
  const rest = records.filter((record) => record.id !== id);
  return rest.length < records.length ? rest : refuse(edit, field, id, 'the id of one that is there');
}

/** `changes` without the keys that are not stated, so that spreading it changes nothing else. */
function stated<T extends object>(changes: T): { [K in keyof T]: Exclude<T[K], undefined> } {
  const kept = Object.entries(changes).filter(([, value]) => value !== undefined);
  return Object.fromEntries(kept) as { [K in keyof T]: Exclude<T[K], undefined> };
}

function describe(sketch: Sketch, { do: _do, ...words }: EditOf<'describe'>): Sketch {
  return { ...sketch, ...stated(words) };
}

function alterPiece(sketch: Sketch, edit: EditOf<'alter-piece'>): Sketch {
  const piece = pieceOf(sketch, edit);
  const { do: _do, piece: _piece, art, ...changes } = edit;
  const { art: before, ...plain } = { ...piece, ...stated(changes) };
  const kept = art === undefined ? before : art;
  return withPiece(sketch, kept ? { ...plain, art: kept } : plain);
}

function addPiece(sketch: Sketch, edit: EditOf<'add-piece'>): Sketch {
  const at = Math.min(edit.at ?? sketch.pieces.length, sketch.pieces.length);
  return { ...sketch, pieces: [...sketch.pieces.slice(0, at), edit.piece, ...sketch.pieces.slice(at)] };
}

/** A removed piece leaves its mats where they are, free, and goes out of every contrast. */
function removePiece(sketch: Sketch, edit: EditOf<'remove-piece'>): Sketch {
  const piece = pieceOf(sketch, edit);
  const pieces = sketch.pieces
    .filter((other) => other !== piece)
    .map((other): Piece => {
      if (other.mats?.piece !== piece.id) return other;
      const { mats: _mats, ...free } = other;
      return free;
    });
  const contrast = sketch.batch.contrast
    .map((group) => group.filter((id) => id !== piece.id))
    .filter((group) => group.length > 1);
  return { ...sketch, pieces, batch: { ...sketch.batch, contrast } };
}

function punchEdge(sketch: Sketch, edit: EditOf<'punch'>): Sketch {
  const piece = pieceOf(sketch, edit);
  const { [edit.edge]: _before, ...others } = piece.punched;
  return withPiece(sketch, {
    ...piece,
    punched: edit.punch === null ? others : { ...others, [edit.edge]: edit.punch },
  });
}

function order(sketch: Sketch, edit: EditOf<'order'>): Sketch {
  const piece = pieceOf(sketch, edit);
  const others = sketch.pieces.filter((other) => other !== piece);
  const to = Math.min(edit.to, others.length);
  return { ...sketch, pieces: [...others.slice(0, to), piece, ...others.slice(to)] };
}

/** A circle of mats would follow itself without end, so the references are checked before anything follows. */
function mat(sketch: Sketch, edit: EditOf<'mat'>): Sketch {
  const { mats: _mats, ...free } = pieceOf(sketch, edit);
  const changed: Piece = edit.mats === null ? free : { ...free, mats: edit.mats };
  const tied = { ...sketch, pieces: sketch.pieces.map((piece) => (piece.id === changed.id ? changed : piece)) };
  requireSound(tied);
  return edit.mats === null ? tied : { ...tied, pieces: followMats(tied.pieces, edit.mats.piece) };
}

/** A variation in its old place, or at the end; `at` is where it comes in the order in which variations are put on. */
function setVariation(sketch: Sketch, { variation, at }: EditOf<'set-variation'>): Sketch {
  if (at === undefined) return { ...sketch, variations: replaced(sketch.variations, variation) };
  const others = sketch.variations.filter(({ id }) => id !== variation.id);
  return { ...sketch, variations: [...others.slice(0, at), variation, ...others.slice(at)] };
}

function changed(sketch: Sketch, edit: Edit): Sketch {
  switch (edit.do) {
    case 'describe':
      return describe(sketch, edit);
    case 'unit':
      return { ...sketch, unit: edit.unit };
    case 'card':
      return { ...sketch, card: edit.card };
    case 'batch':
      return { ...sketch, batch: edit.batch };
    case 'add-piece':
      return addPiece(sketch, edit);
    case 'remove-piece':
      return removePiece(sketch, edit);
    case 'place': {
      const piece = pieceOf(sketch, edit);
      return placed(sketch, edit, piece, { x: edit.x, y: edit.y, width: piece.width, height: piece.height });
    }
    case 'resize': {
      const { x, y, width, height } = edit;
      return placed(sketch, edit, pieceOf(sketch, edit), { x, y, width, height });
    }
    case 'tilt':
      return withPiece(sketch, { ...pieceOf(sketch, edit), tilt: edit.tilt });
    case 'round':
      return rounded(sketch, edit, pieceOf(sketch, edit), edit.corners);
    case 'punch':
      return punchEdge(sketch, edit);
    case 'order':
      return order(sketch, edit);
    case 'cut-from':
      return withPiece(sketch, { ...pieceOf(sketch, edit), from: edit.from });
    case 'mat':
      return mat(sketch, edit);
    case 'alter-piece':
      return alterPiece(sketch, edit);
    case 'set-paper':
      return { ...sketch, papers: replaced(sketch.papers, edit.paper) };
    case 'remove-paper':
      return { ...sketch, papers: without(edit, 'paper', sketch.papers, edit.paper) };
    case 'set-mix':
      return { ...sketch, mixes: replaced(sketch.mixes, edit.mix) };
    case 'remove-mix':
      return { ...sketch, mixes: without(edit, 'mix', sketch.mixes, edit.mix) };
    case 'set-punch':
      return { ...sketch, punches: replaced(sketch.punches, edit.punch) };
    case 'remove-punch':
      return { ...sketch, punches: without(edit, 'punch', sketch.punches, edit.punch) };
    case 'set-variation':
      return setVariation(sketch, edit);
    case 'remove-variation':
      return { ...sketch, variations: without(edit, 'variation', sketch.variations, edit.variation) };
  }
}

/** Edits that keep every reference sound, so that a drag does not check the whole sketch on every move. */
const ALWAYS_SOUND: ReadonlySet<Edit['do']> = new Set([
  'place',
  'resize',
  'tilt',
  'round',
  'order',
  'unit',
  'describe',
  'remove-variation',
]);

/**
 * The sketch after `edit`; `sketch` itself stays as it is, and whatever the edit does not touch is the same object.
 * @throws EditError when the edit names what is not there, or would leave a reference without its target.
 */
export function applyEdit(sketch: Sketch, edit: Edit): Sketch {
  const after = changed(sketch, edit);
  if (ALWAYS_SOUND.has(edit.do)) return after;
  requireSound(after);
  return after;
}

/** The sketch after all of `edits`, in order. @throws EditError at the first that cannot be applied. */
export function applyEdits(sketch: Sketch, edits: readonly Edit[]): Sketch {
  return edits.reduce(applyEdit, sketch);
}

/** The next free id of the form `piece-3` among `taken`. */
export function freeId(stem: string, taken: readonly { readonly id: string }[]): string {
  const used = new Set(taken.map((record) => record.id));
  for (let n = 1; ; n += 1) if (!used.has(`${stem}-${n}`)) return `${stem}-${n}`;
}

/** `piece` moved by whole ticks. */
export function movedBy(piece: Piece, x: number, y: number): EditOf<'place'> {
  return { do: 'place', piece: piece.id, x: ticks(piece.x + x), y: ticks(piece.y + y) };
}
