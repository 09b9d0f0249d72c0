import { G, Svg } from '@svgdotjs/svg.js';
import { type Drawing, drawStack, type Item, layoutStack, unit } from '@trimwell/handout';
import type { Face, Sketch } from '@trimwell/sketch';
import { Stage } from '../face/stage.js';
import type { RowPlace } from './stack-order.js';

/** Width of the picture in pixels, and the height of a row with few, with some and with many pieces. */
export const PICTURE_WIDTH = 128;
const ROWS = [
  { most: 7, height: 30 },
  { most: 8, height: 28 },
] as const;
const LEAST_ROW = 26;
/** How far back the picture reaches beside the card's width, as a share of the card's height; and its letters' share. */
const LEAN = 0.34;
const LETTERS = 14;
/** Where a row's words stand on the depth of the card, as a share of its height. */
const WORDS = 0.1;

/** The stack as it is shown: the drawing of its slips, and where each row of words goes. */
export interface StackSight {
  readonly drawing: Drawing;
  readonly rows: readonly RowPlace[];
  readonly height: number;
  /** Where the back of each slip lies, in ticks of the drawing. */
  readonly levels: ReadonlyMap<string, number>;
  /** Pixels per tick. */
  readonly zoom: number;
}

/** The stack of `face` at the size of the table, its rows at least 26 pixels apart. */
export function stackSight(sketch: Sketch, face: Face): StackSight {
  const { card } = sketch;
  const size = (card.width + card.height * LEAN) / LETTERS;
  const zoom = PICTURE_WIDTH / (card.width + card.height * LEAN + size);
  const count = sketch.pieces.filter((piece) => piece.face === face).length;
  const row = ROWS.find(({ most }) => count <= most)?.height ?? LEAST_ROW;
  const options = { face, size, lift: row / zoom };
  const drawing = drawStack(sketch, { ...options, style: { unit: sketch.unit }, slipsOnly: true });
  const slips = layoutStack(sketch, options);
  const rows = slips.map(({ id, level }) => ({
    id,
    middle: (level - drawing.box.y + card.height * WORDS) * zoom,
  }));
  const levels = new Map(slips.map(({ id, level }) => [id, level]));
  return { drawing, rows, levels, height: drawing.box.height * zoom, zoom };
}

/** `drawing` with the slips `lifted` over all others, so many ticks below where they lie at rest. */
export function liftedSlips(
  drawing: Drawing,
  lifted: readonly string[],
  levels: StackSight['levels'],
  by: number,
): Drawing {
  const isLifted = (item: Item): boolean => item.piece !== undefined && lifted.includes(item.piece);
  const raised = drawing.items.filter(isLifted).map((item): Item => {
    const level = levels.get(item.piece ?? '');
    return item.kind === 'group' && level !== undefined ? { ...item, move: { ...item.move, y: level + by } } : item;
  });
  return { ...drawing, items: [...drawing.items.filter((item) => !isLifted(item)), ...raised] };
}

/** The live picture of the slips, of which only what changes is touched. */
export class StackPicture {
  readonly #svg = new Svg();
  readonly #stage: Stage;

  constructor(place: HTMLElement) {
    place.append(this.#svg.node);
    const group = new G();
    this.#svg.add(group);
    this.#stage = new Stage(group, 'stack');
    this.#svg.attr({ 'aria-hidden': 'true' });
  }

  show(drawing: Drawing, classes: (piece: string) => Readonly<Record<string, boolean>>): void {
    const { x, y, width, height } = drawing.box;
    this.#svg.attr({ viewBox: [x, y, width, height].map(unit).join(' ') });
    this.#stage.show(drawing);
    for (const [piece, group] of this.#stage.pieces())
      for (const [name, on] of Object.entries(classes(piece))) group.classList.toggle(name, on);
  }

  /** The piece at the end of an event's path, or null. */
  pieceAt(event: Event): string | null {
    const [target] = event.composedPath();
    return target instanceof SVGElement && this.#svg.node.contains(target) ? (target.dataset['piece'] ?? null) : null;
  }
}
