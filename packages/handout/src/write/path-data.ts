import type { Outline, OutlineStep } from '@trimwell/geometry';
import { unit } from './units.js';

function stepData(step: OutlineStep): string {
  const to = `${unit(step.to.x)} ${unit(step.to.y)}`;
  switch (step.kind) {
    case 'line':
      return `L${to}`;
    case 'arc':
      return `A${unit(step.radiusX)} ${unit(step.radiusY)} 0 0 ${step.clockwise ? 1 : 0} ${to}`;
    case 'curve':
      return `C${unit(step.control1.x)} ${unit(step.control1.y)} ${unit(step.control2.x)} ${unit(step.control2.y)} ${to}`;
  }
}

/** An outline as SVG path data in user units, arcs as real arcs; closed unless `open`. */
export function pathData({ start, steps }: Outline, open = false): string {
  return `M${unit(start.x)} ${unit(start.y)}${steps.map(stepData).join('')}${open ? '' : 'Z'}`;
}
