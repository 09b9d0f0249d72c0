import { formatLength, type Length, type Size } from '@trimwell/geometry';
import {
  applyEdit,
  type CardEdit,
  type Corners,
  counted,
  EditError,
  type Piece,
  type Sketch,
  type Variation,
} from '@trimwell/sketch';

/** What one edit of a variation does, in words; `unfit` where it cannot be made on this card any more. */
export interface EditWords {
  readonly index: number;
  readonly piece: string | null;
  readonly says: string;
  readonly unfit: boolean;
}

/** Lengths in the unit of `sketch`, not broken between the whole inches and their fraction. */
function written(sketch: Sketch) {
  const length = (value: Length, bare = false): string =>
    formatLength(value, { unit: sketch.unit, bare }).replaceAll(' ', '\u00a0');
  const size = ({ width, height }: Size): string => `${length(width, true)} × ${length(height)}`;
  return { length, size };
}

function cornersText(sketch: Sketch, { tl, tr, br, bl }: Corners): string {
  if (tl !== tr || tl !== br || tl !== bl) return 'rounded each in its own way';
  return tl === 0 ? 'square' : `rounded by ${written(sketch).length(tl)}`;
}

const sourceName = ({ papers, mixes }: Sketch, id: string): string =>
  [...papers, ...mixes].find((source) => source.id === id)?.name ?? id;
const punchName = ({ punches }: Sketch, id: string): string => punches.find((punch) => punch.id === id)?.name ?? id;
const pieceName = ({ pieces }: Sketch, id: string): string => pieces.find((piece) => piece.id === id)?.name ?? id;

function alteredText(
  sketch: Sketch,
  edit: Extract<CardEdit, { do: 'alter-piece' }>,
  before: Piece | undefined,
): string {
  const { length } = written(sketch);
  const parts = [
    edit.name === undefined ? '' : `called ${edit.name}`,
    edit.kind === undefined ? '' : `a ${edit.kind}`,
    edit.shape === undefined ? '' : `cut as a ${edit.shape}`,
    edit.face === undefined ? '' : edit.face === 'front' ? 'glued to the front' : 'glued inside',
    edit.raise === undefined ? '' : raisedText(edit.raise, before, length),
    edit.perCard === undefined ? '' : `${edit.perCard} on each card`,
    edit.art === undefined ? '' : edit.art === null ? 'without its drawing' : 'with another drawing',
    edit.locked === undefined ? '' : edit.locked ? 'locked' : 'unlocked',
    edit.hidden === undefined ? '' : edit.hidden ? 'hidden' : 'shown',
  ];
  return parts.filter(Boolean).join(', ');
}

function raisedText(raise: Length, before: Piece | undefined, length: (value: Length) => string): string {
  if (raise > 0) return `raised by ${length(raise)}`;
  return before && before.raise > 0 ? `glued flat, not raised by ${length(before.raise)}` : 'glued flat';
}

function placedText(sketch: Sketch, { x, y }: { readonly x: Length; readonly y: Length }): string {
  const { length } = written(sketch);
  return `moved to ${length(x)} from the left, ${length(y)} from the top`;
}

function cardText(before: Sketch, { card }: Extract<CardEdit, { do: 'card' }>): string {
  const { size } = written(before);
  const resized = card.width !== before.card.width || card.height !== before.card.height;
  const folds = { left: 'folded at the left', top: 'folded at the top', none: 'without a fold' } as const;
  const parts = [
    resized ? `${size(before.card)} → ${size(card)}` : '',
    card.fold === before.card.fold ? '' : folds[card.fold],
    card.base === before.card.base ? '' : `cut from ${sourceName(before, card.base)}`,
    JSON.stringify(card.envelope) === JSON.stringify(before.card.envelope)
      ? ''
      : card.envelope
        ? `for envelope ${card.envelope.name}`
        : 'without an envelope',
  ];
  return `Card: ${parts.filter(Boolean).join(', ') || 'as it is'}`;
}

/** What an edit on a piece says, without the piece's name. */
function pieceText(before: Sketch, edit: CardEdit & { readonly piece: string }): string {
  const piece = before.pieces.find(({ id }) => id === edit.piece);
  const { length, size } = written(before);
  switch (edit.do) {
    case 'remove-piece':
      return 'left out';
    case 'place':
      return placedText(before, edit);
    case 'resize':
      if (!piece) return size(edit);
      if (piece.width === edit.width && piece.height === edit.height) return placedText(before, edit);
      return `${size(piece)} → ${size(edit)}`;
    case 'tilt':
      return `tilted ${piece?.tilt ?? 0}° → ${edit.tilt}°`;
    case 'round':
      return `corners ${cornersText(before, edit.corners)}`;
    case 'punch':
      return `${edit.edge} edge ${edit.punch === null ? 'plain' : `with ${punchName(before, edit.punch)}`}`;
    case 'order':
      return `glued ${piece && edit.to < before.pieces.indexOf(piece) ? 'earlier' : 'later'}`;
    case 'cut-from':
      return `from ${sourceName(before, edit.from)}${piece ? `, not ${sourceName(before, piece.from)}` : ''}`;
    case 'mat':
      return edit.mats === null
        ? 'no longer a mat'
        : `shows ${length(edit.mats.reveal)} around ${pieceName(before, edit.mats.piece)}`;
    case 'alter-piece':
      return alteredText(before, edit, piece);
    default:
      return '';
  }
}

function editText(before: Sketch, edit: CardEdit): string {
  const there = (records: readonly { readonly id: string }[], id: string): string =>
    records.some((record) => record.id === id) ? 'changed' : 'added';
  switch (edit.do) {
    case 'card':
      return cardText(before, edit);
    case 'describe':
      return `Words of the sketch: ${edit.title ?? 'changed'}`;
    case 'unit':
      return `Measured in ${edit.unit === 'in' ? 'inches' : 'millimetres'}`;
    case 'batch':
      return `Batch: ${typeof edit.batch.cards === 'number' ? counted(edit.batch.cards, 'card') : edit.batch.cards}`;
    case 'add-piece':
      return `${edit.piece.name}: added, ${written(before).size(edit.piece)}`;
    case 'set-paper':
      return `Paper ${edit.paper.name}: ${there(before.papers, edit.paper.id)}`;
    case 'remove-paper':
      return `Paper ${sourceName(before, edit.paper)}: left out`;
    case 'set-mix':
      return `Mix ${edit.mix.name}: ${there(before.mixes, edit.mix.id)}`;
    case 'remove-mix':
      return `Mix ${sourceName(before, edit.mix)}: left out`;
    case 'set-punch':
      return `Punch ${edit.punch.name}: ${there(before.punches, edit.punch.id)}`;
    case 'remove-punch':
      return `Punch ${punchName(before, edit.punch)}: left out`;
    default:
      return `${pieceName(before, edit.piece)}: ${pieceText(before, edit)}`;
  }
}

function pieceOf(edit: CardEdit): string | null {
  if (edit.do === 'add-piece') return edit.piece.id;
  return 'piece' in edit ? edit.piece : null;
}

/**
 * What a variation changes on `sketch`, an entry for every edit in its order: `Gingham strip: 3 3/4 × 1 in → 3 3/4 × 1 1/4 in`.
 * Each is told against what the edits before it leave.
 */
export function editWords(sketch: Sketch, { edits }: Variation): readonly EditWords[] {
  let before = sketch;
  return edits.map((edit, index) => {
    const words = { index, piece: pieceOf(edit), says: editText(before, edit) };
    try {
      before = applyEdit(before, edit);
      return { ...words, unfit: false };
    } catch (error) {
      if (!(error instanceof EditError)) throw error;
      return { ...words, unfit: true };
    }
  });
}
