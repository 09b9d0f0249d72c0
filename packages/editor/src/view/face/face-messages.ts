import { formatLength, formatSize, type Length, ticks } from '@trimwell/geometry';
import { type Piece, rulerStep, type Sketch } from '@trimwell/sketch';
import { said, unitName } from './said-length.js';

function sourceName({ papers, mixes }: Sketch, from: string): string {
  return [...papers, ...mixes].find(({ id }) => id === from)?.name ?? from;
}

/** Where a piece lies in the order of gluing on its face. */
function orderText(sketch: Sketch, piece: Piece): string {
  const order = sketch.pieces.filter(({ face }) => face === piece.face);
  return `${piece.name}: ${order.indexOf(piece) + 1} of ${order.length} from the card up`;
}

const count = (pieces: readonly Piece[]): string => `${pieces.length} pieces`;

/** What is said of several pieces after `event`. */
function afterSeveral(event: string, sketch: Sketch, pieces: readonly Piece[], last: Piece): string | null {
  const { unit } = sketch;
  switch (event) {
    case 'piece.move':
      return `${count(pieces)} moved; ${last.name}: ${faceMessages.place(last, unit)}`;
    case 'piece.select':
      return `${last.name} selected, ${count(pieces)} in all`;
    case 'piece.add':
    case 'piece.duplicate':
    case 'piece.mat':
    case 'piece.paste':
      return `${count(pieces)} added and selected`;
    default:
      return faceMessages.done[event] === undefined ? null : `${count(pieces)}: ${faceMessages.done[event]}`;
  }
}

/** What is said of the one selected piece after `event`. */
function afterOne(event: string, sketch: Sketch, piece: Piece): string | null {
  const { unit } = sketch;
  switch (event) {
    case 'piece.move':
    case 'arrange.align':
      return `${piece.name}: ${faceMessages.place(piece, unit)}`;
    case 'piece.resize':
      return `${piece.name}: ${faceMessages.size(piece, unit)}`;
    case 'piece.tilt':
      return `${piece.name}: ${faceMessages.tilt(piece.tilt)}`;
    case 'piece.round':
      return `${piece.name}: ${faceMessages.corners(piece, unit)}`;
    case 'piece.select':
      return `${piece.name} selected${faceMessages.state(piece)}`;
    case 'piece.add':
    case 'piece.duplicate':
    case 'piece.mat':
    case 'piece.paste':
      return `${faceMessages.piece(sketch, piece)}, added`;
    default:
      if (event.startsWith('order.')) return orderText(sketch, piece);
      return faceMessages.done[event] === undefined ? null : `${piece.name}: ${faceMessages.done[event]}`;
  }
}

/** Every sentence of the card face; what things come to rest on is told by `snapWords`. */
export const faceMessages = {
  front: (sketch: Sketch) => `${sketch.title}, card face`,
  inside: (sketch: Sketch) => `${sketch.title}, inside`,
  help: 'Arrow keys go from piece to piece. Enter takes a piece, Shift and full stop the next one too; then the arrow keys move what is taken. Escape lets go.',
  size: ({ width, height }: Pick<Piece, 'width' | 'height'>, unit: Sketch['unit']) =>
    `${said(width, unit)} by ${said(height, unit)} ${unitName(unit)}`,
  place: ({ x, y }: Pick<Piece, 'x' | 'y'>, unit: Sketch['unit']) =>
    `${said(x, unit)} from left, ${said(y, unit)} from top`,
  tilt: (tilt: number) =>
    tilt === 0 ? 'upright' : `tilted ${Math.abs(tilt)} degrees to the ${tilt < 0 ? 'left' : 'right'}`,
  state: ({ locked, hidden }: Pick<Piece, 'locked' | 'hidden'>) =>
    `${locked ? ', locked' : ''}${hidden ? ', hidden' : ''}`,
  /** The accessible name of a piece. */
  piece: (sketch: Sketch, piece: Piece) =>
    [
      piece.name,
      ...(piece.art?.motif === 'words' && piece.art.words !== '' ? [piece.art.words] : []),
      ...(piece.shape === 'rectangle' ? [] : [piece.shape]),
      faceMessages.size(piece, sketch.unit),
      faceMessages.place(piece, sketch.unit),
      ...(piece.tilt === 0 ? [] : [faceMessages.tilt(piece.tilt)]),
      `cut from ${sourceName(sketch, piece.from)}`,
    ].join(', ') + faceMessages.state(piece),
  /** What is announced after `event` on the selected `pieces`, of which `last` was taken last; null for nothing. */
  after: (event: string, sketch: Sketch, pieces: readonly Piece[], last: Piece | null): string | null => {
    if (event === 'piece.remove') return 'Taken away';
    if (!last) return event === 'piece.select' ? 'Nothing selected' : null;
    return pieces.length > 1 ? afterSeveral(event, sketch, pieces, last) : afterOne(event, sketch, last);
  },
  /** What was done, where the figures say nothing more. */
  done: {
    'piece.resize': 'resized',
    'piece.tilt': 'tilted',
    'piece.lock': 'locked in place',
    'piece.unlock': 'free to move',
    'piece.hide': 'hidden, but still in the stack',
    'piece.show': 'shown again',
    'piece.free': 'no mat any more, a piece of its own',
    'piece.face': 'on the other side of the leaf',
    'order.raise': 'glued later',
    'order.lower': 'glued earlier',
    'order.top': 'glued last',
    'order.bottom': 'glued first',
    'arrange.align': 'lined up',
    'arrange.space': 'spaced evenly',
    'arrange.size': 'the same size',
  } as Readonly<Record<string, string>>,
  corners: ({ corners: { tl, tr, br, bl } }: Pick<Piece, 'corners'>, unit: Sketch['unit']) => {
    const [one, ...others] = [tl, tr, br, bl].map((radius) => (radius === 0 ? 'square' : said(radius, unit)));
    if (others.every((other) => other === one))
      return one === 'square' ? 'square corners' : `corners rounded by ${one} ${unitName(unit)}`;
    return `corners clockwise from top left ${[one, ...others].join(', ')} ${unitName(unit)}`;
  },
  /** Why nothing was done: what is locked stays. */
  locked: (names: readonly string[]) =>
    `${names.length > 3 ? `${names.length} pieces` : names.join(' and ')} ${names.length === 1 ? 'is locked and stays' : 'are locked and stay'}. Unlock with L, or on the ticket.`,
  /** How far arranged pieces are from even, since they were brought to marks of the ruler. */
  nearestMark: (off: Length, unit: Sketch['unit']) =>
    `on the nearest mark of the ruler, up to ${said(off, unit)} ${unitName(unit)} off`,
  /** Pasted pieces that no mark of the sketch's ruler measures; their sizes are as they were. */
  offTheRuler: (off: number, pieces: number, unit: Sketch['unit']) => {
    const marks = `${said(rulerStep(unit), unit)} ${unit === 'in' ? 'inch' : 'millimetre'}`;
    if (pieces === 1) return `its size is off the ruler, between its marks of ${marks}`;
    return `${off === pieces ? 'their sizes are' : `the sizes of ${off} are`} off the ruler, between its marks of ${marks}`;
  },
  undone: 'Undone',
  redone: 'Done again',
  cancelled: 'Put back',
  copied: (pieces: readonly Piece[]) =>
    pieces.length === 1 ? `${pieces[0]?.name} copied` : `${pieces.length} pieces copied`,
  nothingToCopy: 'Nothing is selected that could be copied',
  /** Figures on the stage, with drawn fractions. */
  placeFigure: ({ x, y }: Pick<Piece, 'x' | 'y'>, unit: Sketch['unit']) =>
    `${formatLength(x, { unit, bare: true })} from left, ${formatLength(y, { unit, bare: true })} from top`,
  tiltFigure: (tilt: number) => `${tilt}°`.replace('-', '−'),
  figure: (length: Length, unit: Sketch['unit']) => formatLength(ticks(length), { unit, bare: true }),
  sizeFigure: (piece: Pick<Piece, 'width' | 'height'>, unit: Sketch['unit']) => formatSize(piece, { unit }),
} as const;
