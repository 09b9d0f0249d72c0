import {
  type EdgeStep,
  type PunchProfile,
  punchDepth,
  punchEyelets,
  punchedEdge,
  punchReach,
} from '@trimwell/geometry';
import { svg, type TemplateResult } from 'lit';

/** Pixels of a picture to an inch, so that the punches of one list are seen in their true sizes beside one another. */
const PIXELS_PER_INCH = 56;
const PIXELS_PER_TICK = PIXELS_PER_INCH / 16256;

/** What a picture shows: a strip of paper from above, its punched edge at the bottom. */
export interface PictureSize {
  readonly width: number;
  readonly height: number;
}

function step(one: EdgeStep, bottom: number, scale: number): string {
  const point = ({ along, in: inside }: { readonly along: number; readonly in: number }): string =>
    `${(along * scale).toFixed(2)} ${(bottom - inside * scale).toFixed(2)}`;
  switch (one.kind) {
    case 'line':
      return `L${point(one.to)}`;
    case 'arc': {
      const radii = `${(one.radiusAlong * scale).toFixed(3)} ${(one.radiusIn * scale).toFixed(3)}`;
      // The edge is walked from left to right along the bottom, with the paper to the left of the walk.
      return `A${radii} 0 0 ${one.outward ? 0 : 1} ${point(one.to)}`;
    }
    case 'curve':
      return `C${point(one.control1)} ${point(one.control2)} ${point(one.to)}`;
  }
}

/** The path of a punched edge along the bottom of a strip, in pixels, from its left end; `scale` is pixels per tick. */
export function edgePath(punch: PunchProfile | null, width: number, bottom: number, scale: number): string {
  if (!punch) return `M0 ${bottom}L${width} ${bottom}`;
  const length = width / scale;
  const steps = punchedEdge(length, 0, length, punch);
  const start = bottom - punchDepth(length, 0, punch) * scale;
  return `M0 ${start.toFixed(2)}${steps.map((one) => step(one, bottom, scale)).join('')}`;
}

/** A punch drawn as what it leaves of a strip of paper, with its eyelets; plain without a punch. */
export function punchPicture(
  punch: PunchProfile | null,
  { width, height }: PictureSize = { width: 92, height: 30 },
): TemplateResult {
  const scale = Math.min(PIXELS_PER_TICK, punch ? (height - 8) / punchReach(punch) : 1);
  const bottom = height - 4;
  const edge = edgePath(punch, width, bottom, scale);
  const length = width / scale;
  const eyelets = punch ? punchEyelets(length, 0, length, punch) : [];
  return svg`<svg class="picture" viewBox="0 0 ${width} ${height}" width=${width} height=${height} aria-hidden="true">
    <path class="paper" d="${edge}V0H0Z"></path>
    <path class="edge" d=${edge}></path>
    ${eyelets.map(
      ({ middle, radius }) =>
        svg`<circle class="eyelet" cx=${(middle.along * scale).toFixed(2)} cy=${(bottom - middle.in * scale).toFixed(2)} r=${(radius * scale).toFixed(2)}></circle>`,
    )}
  </svg>`;
}
