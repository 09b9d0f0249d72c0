import { formatLength, formatSize, type Length, ticks } from '@trimwell/geometry';
import type { Piece, Sketch } from '@trimwell/sketch';

/** Plain figures for ears: `3 3/4 inch` with an ordinary slash is read better than a drawn fraction. */
function said(length: Length, unit: Sketch['unit']): string {
  return formatLength(length, { unit, bare: true }).replaceAll('⁄', '/');
}

function unitName(unit: Sketch['unit']): string {
  return unit === 'in' ? 'inches' : 'millimetres';
}

function sourceName({ papers, mixes }: Sketch, from: string): string {
  return [...papers, ...mixes].find(({ id }) => id === from)?.name ?? from;
}

/** Every sentence of the card face. */
export const faceMessages = {
  front: (sketch: Sketch) => `${sketch.title}, card face`,
  inside: (sketch: Sketch) => `${sketch.title}, inside`,
  help: 'Arrow keys go from piece to piece. Enter takes a piece; then the arrow keys move it. Escape lets go.',
  role: 'piece',
  size: ({ width, height }: Pick<Piece, 'width' | 'height'>, unit: Sketch['unit']) =>
    `${said(width, unit)} by ${said(height, unit)} ${unitName(unit)}`,
  place: ({ x, y }: Pick<Piece, 'x' | 'y'>, unit: Sketch['unit']) =>
    `${said(x, unit)} from left, ${said(y, unit)} from top`,
  tilt: (tilt: number) =>
    tilt === 0 ? 'upright' : `tilted ${Math.abs(tilt)} degrees to the ${tilt < 0 ? 'left' : 'right'}`,
  /** The accessible name of a piece. */
  piece: (sketch: Sketch, piece: Piece) =>
    [
      piece.name,
      ...(piece.art?.motif === 'words' && piece.art.words !== '' ? [piece.art.words] : []),
      faceMessages.size(piece, sketch.unit),
      faceMessages.place(piece, sketch.unit),
      ...(piece.tilt === 0 ? [] : [faceMessages.tilt(piece.tilt)]),
      `cut from ${sourceName(sketch, piece.from)}`,
    ].join(', '),
  /** What is announced after `event`; null when there is nothing to say. */
  after: (event: string, sketch: Sketch, piece: Piece | null): string | null => {
    if (!piece)
      return event === 'piece.remove' ? 'Piece taken away' : event === 'piece.select' ? 'Nothing selected' : null;
    const order = sketch.pieces.filter(({ face }) => face === piece.face);
    switch (event) {
      case 'piece.move':
        return `${piece.name}: ${faceMessages.place(piece, sketch.unit)}`;
      case 'piece.resize':
        return `${piece.name}: ${faceMessages.size(piece, sketch.unit)}`;
      case 'piece.tilt':
        return `${piece.name}: ${faceMessages.tilt(piece.tilt)}`;
      case 'piece.select':
        return `${piece.name} selected`;
      case 'piece.add':
      case 'piece.duplicate':
      case 'piece.mat':
        return `${faceMessages.piece(sketch, piece)}, added`;
      default:
        return event.startsWith('order.')
          ? `${piece.name}: ${order.indexOf(piece) + 1} of ${order.length} from the card up`
          : null;
    }
  },
  undone: 'Undone',
  redone: 'Done again',
  cancelled: 'Put back',
  /** Figures on the stage, with drawn fractions. */
  placeFigure: ({ x, y }: Pick<Piece, 'x' | 'y'>, unit: Sketch['unit']) =>
    `${formatLength(x, { unit, bare: true })} from left, ${formatLength(y, { unit, bare: true })} from top`,
  tiltFigure: (tilt: number) => `${tilt}°`.replace('-', '−'),
  figure: (length: Length, unit: Sketch['unit']) => formatLength(ticks(length), { unit, bare: true }),
  sizeFigure: (piece: Pick<Piece, 'width' | 'height'>, unit: Sketch['unit']) => formatSize(piece, { unit }),
} as const;
