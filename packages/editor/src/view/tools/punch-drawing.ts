import {
  formatLength,
  type Length,
  type PunchProfile,
  punchEyelets,
  punchReach,
  ticks,
  type Unit,
} from '@trimwell/geometry';
import { svg, type TemplateResult } from 'lit';
import { edgePath } from './punch-picture.js';

const WIDTH = 380;
const HEIGHT = 178;
/** Left and right end of the strip, and the finished edge, in pixels. */
const LEFT = 20;
const RIGHT = 276;
const EDGE = 104;
/** Highest that the profile may reach into the strip. */
const MOST = 78;

/** A punch as it is measured: all that is drawn of it. */
export interface Measured extends PunchProfile {
  readonly bite: Length;
}

/** An arrowhead at a point, looking along `way` (degrees clockwise from the right), as ISO 129-1 has it: narrow and filled. */
function arrow(x: number, y: number, way: number): TemplateResult {
  return svg`<path class="arrow" d="M0 0L-7 -2.2V2.2Z" transform="translate(${x} ${y}) rotate(${way})"></path>`;
}

function level(from: number, to: number, y: number, figure: string): TemplateResult {
  const middle = (from + to) / 2;
  const inside = to - from > 30;
  return svg`<line class="thin" x1=${from} y1=${EDGE} x2=${from} y2=${y + 4}></line>
    <line class="thin" x1=${to} y1=${EDGE} x2=${to} y2=${y + 4}></line>
    <line class="thin" x1=${inside ? from : from - 14} y1=${y} x2=${inside ? to : to + 14} y2=${y}></line>
    ${arrow(from, y, inside ? 180 : 0)}${arrow(to, y, inside ? 0 : 180)}
    <text x=${middle} y=${y + 15} text-anchor="middle">${figure}</text>`;
}

function upright(from: number, to: number, x: number, name: string, figure: string): TemplateResult {
  const inside = to - from > 26;
  const y = (from + to) / 2;
  return svg`<line class="thin" x1=${RIGHT} y1=${from} x2=${x + 4} y2=${from}></line>
    <line class="thin" x1=${RIGHT} y1=${to} x2=${x + 4} y2=${to}></line>
    <line class="thin" x1=${x} y1=${inside ? from : from - 13} x2=${x} y2=${inside ? to : to + 13}></line>
    ${arrow(x, from, inside ? 270 : 90)}${arrow(x, to, inside ? 90 : 270)}
    <text x=${x + 7} y=${y - 2}>${name}</text><text x=${x + 7} y=${y + 12}>${figure}</text>`;
}

/**
 * A strip of paper under the punch, with its three sizes as a drawing has them: the repeat along the edge, the depth of
 * the profile, and the bite between the finished edge and the edge before (dashed).
 */
export function punchDrawing(punch: Measured, unit: Unit): TemplateResult {
  const width = RIGHT - LEFT;
  // Two repeats and a half fill the strip, unless the profile is so deep, or the bite so wide, that it would not fit.
  const scale = Math.min(width / (2.5 * punch.repeat), MOST / punchReach(punch), 34 / Math.max(1, punch.bite));
  const path = edgePath(punch, width, EDGE, scale);
  const eyelets = punchEyelets(width / scale, 0, width / scale, punch);
  const joint = jointNear(width / scale, punch.repeat);
  const [from, to] = [LEFT + joint * scale, LEFT + (joint + punch.repeat) * scale];
  const before = EDGE + punch.bite * scale;
  const figure = (length: Length): string => formatLength(ticks(length), { unit });
  return svg`<svg class="drawing" viewBox="0 0 ${WIDTH} ${HEIGHT}" role="img" aria-label=${drawingText(punch, unit)}>
    <g transform="translate(${LEFT} 0)">
      <path class="paper" d="${path}V12H0Z"></path>
      <path class="edge" d=${path}></path>
      ${eyelets.map(({ middle, radius }) => svg`<circle class="eyelet" cx=${middle.along * scale} cy=${EDGE - middle.in * scale} r=${radius * scale}></circle>`)}
    </g>
    ${punch.bite > 0 ? svg`<line class="gone" x1=${LEFT} y1=${before} x2=${RIGHT} y2=${before}></line>` : ''}
    ${level(from, to, Math.max(before, EDGE) + 22, `repeat ${figure(punch.repeat)}`)}
    ${upright(EDGE - punch.depth * scale, EDGE, RIGHT + 12, 'depth', figure(punch.depth))}
    ${punch.bite > 0 ? upright(EDGE, before, RIGHT + 12, '', '') : ''}
    ${punch.bite > 0 ? svg`<text x=${RIGHT + 19} y=${Math.max(before + 16, EDGE + 26)}>bite ${figure(punch.bite)}</text>` : ''}
  </svg>`;
}

/** Where a repeat begins on an edge of `length` so that it lies near the middle; repeats are centred as `punchedEdge` has them. */
function jointNear(length: number, repeat: number): number {
  const number = Math.max(1, Math.round(length / repeat));
  return length / 2 - (number % 2 === 0 ? 1 : 0.5) * repeat;
}

/** The drawing in words. */
export function drawingText({ profile, repeat, depth, bite }: Measured, unit: Unit): string {
  const said = (length: Length): string => formatLength(length, { unit }).replaceAll('⁄', '/');
  return `A strip with an edge of ${profile}: repeat ${said(repeat)}, depth ${said(depth)}, bite ${said(bite)}`;
}
