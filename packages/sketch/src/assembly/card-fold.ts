import {
  eachLeaf,
  type FlatCardBase,
  flatCardBase,
  fullestSheet,
  inches,
  type Length,
  millimetres,
  type Size,
  ticks,
  usableRect,
} from '@trimwell/geometry';
import type { BatchPlan } from '../batch/batch-plan.js';
import { CARD_BASE } from '../batch/recipe.js';
import { RULER_STEPS } from '../model/ruler-steps.js';
import type { Paper, Sketch } from '../model/sketch.js';
import { gsmOf } from './estimate-gsm.js';

/** From here on card stock is heavy and may crack where it is folded: 90 lb cover (common practice, no source). */
export const HEAVY_GSM = 243;
/** From here on paper should be scored before it is folded: 150 g/m2 (published trade advice). */
export const SCORED_GSM = 150;
/** Relative luminance (WCAG 2.2) below which a colour is dark: about the middle grey of photographers. */
const DARK = 0.18;
/** Work for the bases of one sheet, which are all alike. */
const SHEET_WORK = 200_000;

/** How the fold lies to the grain of the base's paper; `both` where some bases lie one way and some the other. */
export type FoldGrain = 'along' | 'across' | 'both' | 'unknown';

/** What folding the card takes. */
export interface CardFold {
  /** The base opened flat, and its score. */
  readonly flat: FlatCardBase;
  /** True when the score lies on a mark of the ruler, 1/16 in or 1 mm, or there is none. */
  readonly scoreOnRuler: boolean;
  readonly grain: FoldGrain;
  /** True when the paper is so heavy that it is scored before it is folded. */
  readonly scoreFirst: boolean;
  readonly heavy: boolean;
  /** True when the base is dark, so that a crack would show if its core is white. */
  readonly dark: boolean;
  /** The most bases that straight cuts give from one sheet, and whether that is proven. */
  readonly perSheet: { readonly bases: number; readonly proven: boolean };
  /** What a liner measures that shows an even border of the base: 1/8 in or 3 mm on each side. */
  readonly liner: Size;
  /** True when something lies inside that may be written on. */
  readonly hasLiner: boolean;
}

/** Relative luminance of a colour such as `#2f5d50`, from 0 to 1 (WCAG 2.2, definition of relative luminance). */
export function luminance(colour: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => {
    const share = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** True when nobody would write on that paper with an ordinary pen. */
export function isDark({ look }: Pick<Paper, 'look'>): boolean {
  return luminance(look.ground) < DARK;
}

/** The ways in which the bases lie on their sheets: by the plan where there is one, else where they fit one way only. */
function waysOf(sketch: Sketch, paper: Paper, batch: BatchPlan | undefined): ReadonlySet<'upright' | 'turned'> | null {
  const flat = flatCardBase(sketch.card);
  const found = new Set<'upright' | 'turned'>();
  for (const { job, plan } of batch?.papers ?? [])
    for (const { tree, usable } of plan.sheets)
      eachLeaf(tree, usable, job.trimmer.kerf, (leaf) => {
        if (leaf.is === 'blank' && leaf.blank === CARD_BASE) found.add(leaf.turned ? 'turned' : 'upright');
      });
  if (found.size > 0) return found;
  const { width, height } = usableRect(paper);
  const upright = flat.width <= width && flat.height <= height;
  const turned = flat.height <= width && flat.width <= height && !paper.directional;
  return upright === turned ? null : new Set([upright ? 'upright' : 'turned']);
}

function grainOf(sketch: Sketch, paper: Paper, batch: BatchPlan | undefined): FoldGrain {
  const { fold } = sketch.card;
  const ways = waysOf(sketch, paper, batch);
  if (fold === 'none' || paper.grain === undefined || !ways) return 'unknown';
  // A fold at the left runs along the height of the flat base, which lies along the height of the sheet unless turned.
  const along = (way: 'upright' | 'turned'): boolean =>
    ((fold === 'left') === (way === 'upright') ? 'height' : 'width') === paper.grain;
  const answers = new Set([...ways].map((way) => (along(way) ? 'along' : 'across')));
  return answers.size === 2 ? 'both' : answers.has('along') ? 'along' : 'across';
}

/** What a liner leaves of the base on each side. */
export function linerReveal(unit: Sketch['unit']): Length {
  return unit === 'in' ? inches(1 / 8) : millimetres(3);
}

/** The most blanks of one size from a sheet of `paper`, by straight cuts from edge to edge. */
export function mostPerSheet(paper: Pick<Paper, 'width' | 'height' | 'margins' | 'directional'>, size: Size) {
  const { width, height } = usableRect(paper);
  const blank = { width: size.width, height: size.height, value: 1, most: null, turn: !paper.directional };
  const { value, proven } = fullestSheet(width, height, [blank], SHEET_WORK);
  return { bases: value, proven };
}

/** What folding `sketch`'s card takes; with a plan it is known which way the bases lie on their sheets. */
export function cardFold(sketch: Sketch, batch?: BatchPlan): CardFold {
  const { card, unit } = sketch;
  const flat = flatCardBase(card);
  const paper = sketch.papers.find(({ id }) => id === card.base);
  const { gsm } = gsmOf(sketch, card.base);
  const off = 2 * linerReveal(unit);
  return {
    flat,
    scoreOnRuler: flat.score === null || flat.score.at % RULER_STEPS[unit][0] === 0,
    grain: paper ? grainOf(sketch, paper, batch) : 'unknown',
    scoreFirst: card.fold !== 'none' && gsm >= SCORED_GSM,
    heavy: gsm >= HEAVY_GSM,
    dark: paper ? isDark(paper) : false,
    perSheet: paper ? mostPerSheet(paper, flat) : { bases: 0, proven: true },
    liner: { width: ticks(Math.max(0, card.width - off)), height: ticks(Math.max(0, card.height - off)) },
    hasLiner: sketch.pieces.some(({ face }) => face === 'inside'),
  };
}
