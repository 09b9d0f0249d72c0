import type { Outline, OutlineStep, Point } from '@trimwell/geometry';
import type { CutPart } from './cut-part.js';

/** Where a part lies: its upper left corner on the sheet, turned by a quarter clockwise or not. */
export interface PartPlace {
  readonly x: number;
  readonly y: number;
  readonly turned: boolean;
}

function movedStep(step: OutlineStep, move: (point: Point) => Point, turned: boolean): OutlineStep {
  const to = move(step.to);
  if (step.kind === 'line') return { kind: 'line', to };
  if (step.kind === 'curve') return { kind: 'curve', control1: move(step.control1), control2: move(step.control2), to };
  const [radiusX, radiusY] = turned ? [step.radiusY, step.radiusX] : [step.radiusX, step.radiusY];
  // A quarter turn mirrors nothing, so an arc keeps its direction.
  return { ...step, to, radiusX, radiusY };
}

/** The outlines and scores of `part` on its sheet. */
export function placePart(part: CutPart, { x, y, turned }: PartPlace): Pick<CutPart, 'cut' | 'score'> {
  const move = (point: Point): Point =>
    turned ? { x: x + part.height - point.y, y: y + point.x } : { x: x + point.x, y: y + point.y };
  return {
    cut: part.cut.map(
      ({ start, steps }): Outline => ({
        start: move(start),
        steps: steps.map((step) => movedStep(step, move, turned)),
      }),
    ),
    score: part.score.map(([from, to]) => [move(from), move(to)] as const),
  };
}
