import { formatLength, inches, type LengthStyle, millimetres } from '@trimwell/geometry';
import type { Face, Piece, Sketch } from '@trimwell/sketch';
import type { CardView } from '../../session/card-watch.js';

/** Every sentence of the stack. */

export function faceText(face: Face): string {
  return face === 'front' ? 'on the front' : 'inside';
}

/** A height as paper is measured: tenths of a millimetre, or thousandths of an inch. */
export function thickText(height: number, unit: Sketch['unit']): string {
  return unit === 'mm' ? `${(height / millimetres(1)).toFixed(1)} mm` : `${(height / inches(1)).toFixed(3)} in`;
}

/**
 * `About 2.1 mm at the thickest, at Greeting; 2.6 mm with the card closed.` Without "about" when every caliper in it was measured.
 * What nobody knows yet is a blank line of the same height.
 */
export function thicknessText(view: CardView | null, face: Face): string {
  if (!view) return '\u00a0';
  const { sketch, sight } = view;
  const { thickness } = sight;
  const leaf = sketch.card.fold === 'none' ? thickness.base : thickness.base / 2;
  const top = sketch.pieces.find(({ id }) => id === sight[face].highest);
  const where = top ? `, at ${top.name}` : '';
  const highest = thickText(leaf + thickness[face], sketch.unit);
  const closed = thickText(thickness.height, sketch.unit);
  const whole = sketch.card.fold === 'none' ? 'with both sides' : 'with the card closed';
  return `${thickness.estimated ? 'About ' : ''}${highest} at the thickest${where}; ${closed} ${whole}.`;
}

/** Opens the tray in which the card is built, step by step. */
export const BUILD = 'Build it';
export const ESTIMATED = 'Calipers that no paper states are estimates by weight or kind.';

/** The foam under a piece in figures, or nothing. */
export function foamText({ raise }: Pick<Piece, 'raise'>, style: LengthStyle): string {
  return raise > 0 ? `on foam, ${formatLength(raise, style)}` : '';
}

/** What is announced after a change of the gluing order. */
export function placedText(sketch: Sketch, ids: readonly string[]): string {
  const moved = sketch.pieces.filter(({ id }) => ids.includes(id));
  const [first] = moved;
  if (!first) return '';
  const face = sketch.pieces.filter((piece) => piece.face === first.face);
  const under = face[face.indexOf(first) - 1]?.name ?? 'the card base';
  const what = moved.length === 1 ? first.name : `${moved.length} pieces`;
  return `${what}: right over ${under}, ${face.indexOf(first) + 1} of ${face.length} from the card up`;
}

export function heldText(name: string): string {
  return `${name} is locked in its place.`;
}

export const PUT_BACK = 'Put back';
export const STACK_HELP =
  'Arrow keys go along the stack. Space takes a piece, with Control or Shift one more. Page Up and Page Down change the gluing order, with Shift all the way.';
