import { millimetres, type Point } from '@trimwell/geometry';
import type { Item } from '../drawing/drawing.js';
import { type Atom, blockAt } from './atom.js';
import { type ClipBox, clipLine, clipPath } from './clip-line.js';
import type { HandoutContext } from './context.js';
import { POINT } from './sheet-of-paper.js';
import { flatParts, type TemplatePart } from './template-parts.js';
import { textAtom } from './text-atoms.js';
import { STYLES } from './text-style.js';

/** How far neighbouring tiles show the same, and the arms of the crosses in it that are laid on each other. */
const OVERLAP = millimetres(10);
const ARM = millimetres(3);
const INSIDE = millimetres(8);

/** The tiles of one length: how many, and how far from the start of one to that of the next. */
export function tilesAlong(length: number, room: number): { readonly count: number; readonly step: number } {
  const step = room - OVERLAP;
  return { count: length <= room ? 1 : Math.ceil((length - OVERLAP) / step), step };
}

interface Tiling {
  readonly columns: number;
  readonly rows: number;
  readonly boxes: readonly (ClipBox & { readonly row: number; readonly column: number })[];
  readonly crosses: readonly Point[];
}

/** The tiles of an area of `size`, each at most `room`, and the crosses in the middle of every overlap. */
export function tile(
  size: { readonly width: number; readonly height: number },
  room: { readonly width: number; readonly height: number },
): Tiling {
  const across = tilesAlong(size.width, room.width);
  const down = tilesAlong(size.height, room.height);
  const span = (index: number, { step }: typeof across, length: number, most: number): readonly [number, number] => [
    index * step,
    Math.min(most, length - index * step),
  ];
  const range = (count: number): readonly number[] => Array.from({ length: count }, (_, index) => index);
  const boxes = range(down.count).flatMap((row) =>
    range(across.count).map((column) => {
      const [x, width] = span(column, across, size.width, room.width);
      const [y, height] = span(row, down, size.height, room.height);
      return { x, y, width, height, row, column };
    }),
  );
  const seam = (index: number, step: number): number => (index + 1) * step + OVERLAP / 2;
  const ends = (from: number, length: number): readonly number[] =>
    length <= 2 * INSIDE ? [from + length / 2] : [from + INSIDE, from + length - INSIDE];
  const crosses = boxes.flatMap(({ x, y, width, height, row, column }): readonly Point[] => [
    ...(column < across.count - 1 ? ends(y, height).map((at) => ({ x: seam(column, across.step), y: at })) : []),
    ...(row < down.count - 1 ? ends(x, width).map((at) => ({ x: at, y: seam(row, down.step) })) : []),
  ]);
  return { columns: across.count, rows: down.count, boxes, crosses };
}

function lineItem(key: string, role: 'outline' | 'dimension' | 'fold', from: Point, to: Point): Item {
  return { kind: 'line', key, role, from, to };
}

/** A part that is larger than a page, tile by tile, each a page of its own. */
export function tileAtoms(
  part: TemplatePart,
  room: { readonly width: number; readonly height: number },
  context: HandoutContext,
): readonly Atom[] {
  const { speech, measure } = context;
  const { templates } = speech.say;
  // As tall as it could be, since the number of tiles is not yet known.
  const caption =
    textAtom(templates.part(part.name, 99, 99, 99, 99), STYLES.small, room.width, measure).height + 2 * POINT;
  const inner = { width: room.width, height: room.height - caption };
  const tiling = (turned: boolean): Tiling => tile(flatParts(part, turned), inner);
  const turned = tiling(true).boxes.length < tiling(false).boxes.length;
  const { columns, rows, boxes, crosses } = tiling(turned);
  const flat = flatParts(part, turned);
  return boxes.map((box): Atom => {
    const title = templates.part(part.name, box.row + 1, rows, box.column + 1, columns);
    const words = textAtom(title, STYLES.small, room.width, measure);
    const draw = (at: Point) => {
      const onPage = ({ x, y }: Point): Point => ({ x: at.x + x - box.x, y: at.y + caption + y - box.y });
      const stretches = flat.outlines.flatMap((points) => clipPath(points, box));
      const lines = stretches.map(([start = { x: 0, y: 0 }, ...others], index): Item => {
        const outline = {
          start: onPage(start),
          steps: others.map((to) => ({ kind: 'line' as const, to: onPage(to) })),
        };
        return {
          kind: 'path',
          key: `tile:${part.piece}:${index}`,
          role: 'outline',
          piece: part.piece,
          outline,
          open: true,
        };
      });
      const fold = flat.fold ? clipLine(...flat.fold, box) : null;
      const folds = fold ? [lineItem('fold', 'fold', onPage(fold[0]), onPage(fold[1]))] : [];
      const seen = crosses.filter(
        ({ x, y }) =>
          x - ARM >= box.x && x + ARM <= box.x + box.width && y - ARM >= box.y && y + ARM <= box.y + box.height,
      );
      const marks = seen
        .map(onPage)
        .flatMap(({ x, y }, index) => [
          lineItem(`cross:${index}:x`, 'dimension', { x: x - ARM, y }, { x: x + ARM, y }),
          lineItem(`cross:${index}:y`, 'dimension', { x, y: y - ARM }, { x, y: y + ARM }),
        ]);
      const area = { x: at.x, y: at.y + caption, width: box.width, height: box.height };
      const alt = templates.partAlt(part.name, box.row + 1, box.column + 1);
      return [...words.draw(at), blockAt('Figure', area, [...lines, ...folds, ...marks], { alt })];
    };
    return { height: Math.ceil(caption + box.height), before: 0, draw };
  });
}
