import { labelPieces } from '@trimwell/handout';
import { CARD_BASE, type Sketch } from '@trimwell/sketch';
import { nothing, type SVGTemplateResult, svg } from 'lit';
import { thickText } from '../stack/stack-words.js';
import type { CardSection, LaidSpan, Slab } from './card-section.js';

/** All in pixels of the picture. */
const LEFT = 82;
const RIGHT = 50;
const TOP = 14;
const LETTER = 13;
const HIGHEST = 150;
const LEAST = 1.5;
/** How long a paper takes to come down beside a step. */
const SLANT = 6;

/** How often its height a card may be drawn: the largest of these that fits. */
const TIMES = [1, 2, 3, 5, 8, 10, 15, 20, 30, 50] as const;

/** What the picture of a section shows, worked out before it is drawn. */
export interface SectionScale {
  /** Pixels per tick, across. */
  readonly across: number;
  /** How often its true proportion the height is drawn. */
  readonly times: number;
}

export function sectionScale({ from, to, height }: CardSection, width: number): SectionScale {
  const across = (width - LEFT - RIGHT) / Math.max(1, to - from);
  const times = [...TIMES].reverse().find((each) => height * across * each <= HIGHEST) ?? 1;
  return { across, times };
}

function groundOf(sketch: Sketch, piece: string): string {
  const from = piece === CARD_BASE ? sketch.card.base : (sketch.pieces.find(({ id }) => id === piece)?.from ?? '');
  const [first] = sketch.mixes.find(({ id }) => id === from)?.papers ?? [from];
  return sketch.papers.find(({ id }) => id === first)?.look.ground ?? '#ffffff';
}

/** Heights of the letters beside the section: each at its paper, and a line apart. */
function letterPlaces(middles: readonly number[]): readonly number[] {
  const places: number[] = [];
  // From the table up; what does not fit beside its paper goes higher.
  for (const middle of middles) places.push(Math.min(middle, (places.at(-1) ?? LETTER) - LETTER));
  return places;
}

/** Where a paper ends on the right: there its letter is. */
function endOf(slab: Slab): LaidSpan {
  return slab.spans.reduce((last, span) => (span.to > last.to ? span : last));
}

/** The middle of a paper where it ends on the right. */
function heightAtEnd(slab: Slab): number {
  const { bottom, top } = endOf(slab);
  return (bottom + top) / 2;
}

/** The spans of a paper that are one piece of it. */
function runsOf({ spans }: Slab): readonly (readonly LaidSpan[])[] {
  const runs: LaidSpan[][] = [];
  for (const span of spans) {
    const last = runs.at(-1);
    if (last?.at(-1)?.to === span.from) last.push(span);
    else runs.push([span]);
  }
  return runs;
}

/** The outline of a paper in pixels: level, and slanted where it comes down beside a step. */
function paperPath(run: readonly LaidSpan[], x: (at: number) => number, y: (at: number) => number): string {
  const upper: string[] = [];
  const lower: string[] = [];
  run.forEach(({ from, to, bottom, top }, at) => {
    const [before, after] = [run[at - 1], run[at + 1]];
    const [start, end] = [x(from), Math.max(x(to), x(from) + 1)];
    const slant = Math.min(SLANT, (end - start) / 2);
    const left = before && before.bottom > bottom ? start + slant : start;
    const right = after && after.bottom > bottom ? end - slant : end;
    const head = Math.min(y(top), y(bottom) - LEAST);
    upper.push(`${left} ${head}`, `${right} ${head}`);
    lower.unshift(`${right} ${y(bottom)}`, `${left} ${y(bottom)}`);
  });
  return `M${[...upper, ...lower].join('L')}Z`;
}

/** True when another paper as high as its end, or foam under one, lies to the right of it: then its letter stands over it. */
function isBehind(slab: Slab, slabs: readonly Slab[]): boolean {
  const { to, bottom, top } = endOf(slab);
  return slabs.some(
    ({ spans, piece, below }) =>
      piece !== slab.piece &&
      spans.some((other) => {
        const [low, high] = below ? [other.bottom - other.foam, other.top] : [other.bottom, other.top + other.foam];
        return other.to > to && low < top && high > bottom;
      }),
  );
}

/**
 * The section as a picture `width` pixels wide, its papers from the table up, heights drawn larger than they are. Its letters come last: one
 * that stands over its paper may stand on another one.
 */
export function sectionPicture(
  sketch: Sketch,
  section: CardSection,
  width: number,
  lit: string | null,
  point: (piece: string | null) => void,
): SVGTemplateResult {
  const { across, times } = sectionScale(section, width);
  const up = across * times;
  const labels = labelPieces(sketch);
  const free = section.slabs.filter((slab) => !isBehind(slab, section.slabs));
  // First as if the table were at 0, upwards being less: the highest letter or paper says how high the picture is.
  const levels = letterPlaces(free.map((slab) => -heightAtEnd(slab) * up));
  const foot = TOP + Math.max(section.height * up, ...levels.map((level) => -level));
  const x = (at: number): number => LEFT + (at - section.from) * across;
  const y = (at: number): number => foot - at * up;
  const column = width - RIGHT + 30;
  const places = levels.map((level) => foot + level);
  const letter = (slab: Slab): SVGTemplateResult => {
    const text = labels.get(slab.piece) ?? '?';
    const place = places[free.indexOf(slab)];
    if (place === undefined) {
      const [widest] = [...slab.spans].sort((a, b) => b.to - b.from - (a.to - a.from));
      const middle = widest ? (widest.from + widest.to) / 2 : 0;
      return svg`<text x=${x(middle)} y=${y(slab.top) - 4} text-anchor="middle">${text}</text>`;
    }
    return svg`<path class="leader" d="M${x(endOf(slab).to) + 2} ${y(heightAtEnd(slab))}L${column - 14} ${place}H${column - 4}"></path>
      <text x=${column} y=${place + 4}>${text}</text>`;
  };
  const own = ({ piece }: Slab, inside: unknown): SVGTemplateResult => svg`<g
      class=${piece === lit ? 'lit' : ''}
      @pointerover=${() => point(piece === CARD_BASE ? null : piece)}
      @pointerleave=${() => point(null)}
    >${inside}</g>`;
  const paper = (slab: Slab): SVGTemplateResult => {
    const { piece, spans, below } = slab;
    return svg`${spans.map(({ from, to, bottom, top, foam }) =>
      foam > 0
        ? svg`<rect class="foam" x=${x(from) + 3} width=${Math.max(2, (to - from) * across - 6)} y=${y(below ? bottom : top + foam)} height=${foam * up}></rect>`
        : nothing,
    )}
      ${runsOf(slab).map(
        (run) => svg`<path class="paper" fill=${groundOf(sketch, piece)} d=${paperPath(run, x, y)}></path>`,
      )}`;
  };
  const [head, tail] = [y(section.height), y(0)];
  return svg`<svg viewBox="0 0 ${width} ${foot + 10}" aria-hidden="true">
    <path class="table" d="M${LEFT - 20} ${foot + 0.5}H${width - RIGHT + 16}"></path>
    ${section.slabs.map((slab) => own(slab, paper(slab)))}
    ${section.slabs.map((slab) => own(slab, letter(slab)))}
    <path class="dimension" d="M${LEFT - 30} ${head}H${LEFT - 18}M${LEFT - 30} ${tail}H${LEFT - 18}M${LEFT - 24} ${head}V${tail}"></path>
    <text class="figure" x=${LEFT - 34} y=${(head + tail) / 2 + 4} text-anchor="end">${thickText(section.height, sketch.unit)}</text>
  </svg>`;
}

/** The section in words, from the table up. */
export function sectionText(sketch: Sketch, { slabs }: CardSection): string {
  const labels = labelPieces(sketch);
  const parts = slabs.map(
    ({ piece, bottom, top }) =>
      `${labels.get(piece) ?? '?'} from ${thickText(bottom, sketch.unit)} to ${thickText(top, sketch.unit)}`,
  );
  return `From the table up: ${parts.join(', ')}.`;
}
