import { eachLeaf, inches, type Length, type Rect, type SheetLayout } from '@trimwell/geometry';
import { type Paper, type Piece, pieceBlank } from '@trimwell/sketch';
import { called, type HandoutContext } from './context.js';

/** Offcuts of one layout that are alike: what they are called, their size, and what could become of each. */
export interface NamedOffcuts {
  readonly names: readonly string[];
  readonly width: Length;
  readonly height: Length;
  readonly use: string;
}

/** An offcut is worth a name when neither of its sides is shorter, as in the list of steps. */
const KEEP = inches(1);
/** A sentiment and a tag of usual sizes (common practice, no source). */
const SENTIMENT = { width: inches(2.5), height: inches(1) };
const TAG = { width: inches(2.5), height: inches(1.5) };

interface Sides {
  readonly width: number;
  readonly height: number;
}

/** How many of `blank` a grid on `room` holds, turned all together where that is allowed and gives more. */
function holds(room: Sides, blank: Sides, turn: boolean): number {
  const grid = (width: number, height: number): number =>
    Math.floor(room.width / width) * Math.floor(room.height / height);
  return Math.max(grid(blank.width, blank.height), turn ? grid(blank.height, blank.width) : 0);
}

/** What an offcut of `paper` would still do for: the largest piece that is cut from it, any other, another card's words. */
function useOf(room: Sides, paper: Paper, context: HandoutContext): string {
  const { sketch, speech } = context;
  const { say } = speech;
  const turn = !paper.directional;
  const sources = [paper.id, ...sketch.mixes.filter(({ papers }) => papers.includes(paper.id)).map(({ id }) => id)];
  const fitting = sketch.pieces
    .map((piece) => ({ piece, count: holds(room, pieceBlank(sketch, piece), turn) }))
    .filter(({ count }) => count > 0);
  const largest = (among: typeof fitting): (typeof fitting)[number] | undefined =>
    among.reduce<(typeof fitting)[number] | undefined>(
      (best, each) => (best && area(best.piece) >= area(each.piece) ? best : each),
      undefined,
    );
  const own = largest(fitting.filter(({ piece }) => sources.includes(piece.from)));
  if (own) return say.fitsSame(own.count, called(context, own.piece.id));
  const other = largest(fitting);
  const words =
    holds(room, TAG, true) > 0 ? [say.fitsTag] : holds(room, SENTIMENT, true) > 0 ? [say.fitsSentiment] : [];
  return [...(other ? [say.fitsOther(called(context, other.piece.id))] : []), ...words].join('; ');
}

function area({ width, height }: Piece): number {
  return width * height;
}

/** The offcuts of a layout that are worth keeping, largest first, named from `R${first}` on. */
export function namedOffcuts(
  layout: SheetLayout,
  paper: Paper,
  { kerf, first }: { readonly kerf: Length; readonly first: number },
  context: HandoutContext,
): {
  readonly offcuts: readonly NamedOffcuts[];
  readonly nameOf: (box: Rect) => string | null;
  readonly count: number;
} {
  const found: Rect[] = [];
  eachLeaf(layout.tree, layout.usable, kerf, (leaf, box) => {
    if (leaf.is === 'offcut' && Math.min(box.width, box.height) >= KEEP) found.push(box);
  });
  found.sort((a, b) => b.width * b.height - a.width * a.height || b.width - a.width || a.y - b.y || a.x - b.x);
  const names = found.map((_, index) => `R${first + index}`);
  const offcuts: NamedOffcuts[] = [];
  found.forEach(({ width, height }, index) => {
    const name = names[index] ?? '';
    const last = offcuts.at(-1);
    if (last && last.width === width && last.height === height)
      offcuts[offcuts.length - 1] = { ...last, names: [...last.names, name] };
    else offcuts.push({ names: [name], width, height, use: useOf({ width, height }, paper, context) });
  });
  const nameOf = ({ x, y }: Rect): string | null => names[found.findIndex((box) => box.x === x && box.y === y)] ?? null;
  return { offcuts, nameOf, count: found.length };
}
