import type { Severity } from '@trimwell/sketch';
import { css, type SVGTemplateResult, svg } from 'lit';

/** Three shapes, told apart without colour: a cross-cut square, a tilted square, a ring. */
const SHAPES: Readonly<Record<Severity, SVGTemplateResult>> = {
  'stops the build': svg`<path class="full" d="M2.5 2.5H13.5V13.5H2.5Z"></path><path class="cut" d="M5 8H11"></path>`,
  'looks wrong': svg`<path d="M8 1.8L14.2 8L8 14.2L1.8 8Z"></path>`,
  'worth knowing': svg`<circle cx="8" cy="8" r="4.6"></circle>`,
};

/** The mark of a finding by how bad it is, 16 pixels high. */
export function severityMark(severity: Severity): SVGTemplateResult {
  return svg`<svg class="severity" viewBox="0 0 16 16" aria-hidden="true">${SHAPES[severity]}</svg>`;
}

export const severityStyles = css`
  .severity {
    display: block;
    width: 14px;
    height: 14px;
    fill: none;
    stroke: currentcolor;
    stroke-width: 1.8;
  }
  .severity .full {
    fill: currentcolor;
  }
  .severity .cut {
    stroke: var(--slip, #fffdf7);
  }
`;
