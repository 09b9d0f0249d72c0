import { type Outline, type OutlineStep, type Point, ticks } from '@trimwell/geometry';
import type { Drawing, GroupItem, Item, SheetLook } from '../drawing/drawing.js';

/** The id under which a paper's look stands when it is drawn at `scale`; ids of papers have no two hyphens in a row. */
function scaledId(paper: string, scale: number): string {
  return scale === 1 ? paper : `${paper}--${Math.round(scale * 10_000)}`;
}

function scaledPoint({ x, y }: Point, scale: number): Point {
  return { x: x * scale, y: y * scale };
}

function scaledStep(step: OutlineStep, scale: number): OutlineStep {
  const to = scaledPoint(step.to, scale);
  if (step.kind === 'line') return { ...step, to };
  if (step.kind === 'arc') return { ...step, to, radiusX: step.radiusX * scale, radiusY: step.radiusY * scale };
  const [control1, control2] = [scaledPoint(step.control1, scale), scaledPoint(step.control2, scale)];
  return { ...step, to, control1, control2 };
}

function scaledOutline({ start, steps }: Outline, scale: number): Outline {
  return { start: scaledPoint(start, scale), steps: steps.map((step) => scaledStep(step, scale)) };
}

/** An item at another scale; the widths of lines are the theme's and stay as they are. */
function scaledItem(item: Item, scale: number): Item {
  switch (item.kind) {
    case 'path': {
      const fill = item.fill ? { fill: { paper: scaledId(item.fill.paper, scale) } } : {};
      return { ...item, outline: scaledOutline(item.outline, scale), ...fill };
    }
    case 'line':
      return { ...item, from: scaledPoint(item.from, scale), to: scaledPoint(item.to, scale) };
    case 'text':
      return { ...item, at: scaledPoint(item.at, scale), size: item.size * scale };
    case 'image':
      return { ...item, at: scaledPoint(item.at, scale), width: item.width * scale, height: item.height * scale };
    case 'group':
      return {
        ...item,
        origin: scaledPoint(item.origin, scale),
        move: scaledPoint(item.move, scale),
        items: item.items.map((inner) => scaledItem(inner, scale)),
      };
  }
}

/** A print shrinks with its paper; its repeat is at least a tick. */
function scaledLook(look: SheetLook, scale: number): SheetLook {
  const length = (value: number) => ticks(Math.max(1, Math.round(value * scale)));
  const { sheet } = look;
  return {
    ...look,
    repeat: length(look.repeat),
    ...(sheet ? { sheet: { width: length(sheet.width), height: length(sheet.height) } } : {}),
  };
}

/** The looks of a drawing as they are at `scale`, by the ids that its scaled items are filled with. */
export function scaledLooks(looks: Drawing['looks'], scale: number): Drawing['looks'] {
  return Object.fromEntries(
    Object.entries(looks).map(([paper, look]) => [
      scaledId(paper, scale),
      scale === 1 ? look : scaledLook(look, scale),
    ]),
  );
}

/** The items of a drawing at `scale` as one group, with the drawing's own origin at `at` on the page. */
export function scaledGroup(items: readonly Item[], scale: number, at: Point, key: string): GroupItem {
  const nought = { x: 0, y: 0 };
  const own = scale === 1 ? items : items.map((item) => scaledItem(item, scale));
  return { kind: 'group', key, role: 'outline', origin: nought, move: at, turn: 0, items: own };
}
