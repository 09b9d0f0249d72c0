import type { Outline, OutlineStep, Point } from '@trimwell/geometry';
import type { Item } from './drawing.js';

function shiftPoint({ x, y }: Point, by: Point): Point {
  return { x: x + by.x, y: y + by.y };
}

function shiftStep(step: OutlineStep, by: Point): OutlineStep {
  const to = shiftPoint(step.to, by);
  return step.kind === 'curve'
    ? { ...step, to, control1: shiftPoint(step.control1, by), control2: shiftPoint(step.control2, by) }
    : { ...step, to };
}

/** An outline moved by `by`, in ticks. */
export function shiftOutline({ start, steps }: Outline, by: Point): Outline {
  return { start: shiftPoint(start, by), steps: steps.map((step) => shiftStep(step, by)) };
}

/** An item moved by `by`, in ticks; of a group only where it lies changes. */
export function shiftItem(item: Item, by: Point): Item {
  switch (item.kind) {
    case 'path':
      return { ...item, outline: shiftOutline(item.outline, by) };
    case 'line':
      return { ...item, from: shiftPoint(item.from, by), to: shiftPoint(item.to, by) };
    case 'text':
    case 'image':
      return { ...item, at: shiftPoint(item.at, by) };
    case 'group':
      return { ...item, move: shiftPoint(item.move, by) };
  }
}
