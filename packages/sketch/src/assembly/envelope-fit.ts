import { inches, type Length, millimetres, type Size, ticks } from '@trimwell/geometry';
import { type EnvelopeSize, envelopesFor } from '../begin/envelope-sizes.js';
import { rulerStep } from '../model/ruler-steps.js';
import type { Card, Sketch } from '../model/sketch.js';
import type { CardGirth } from './card-girth.js';
import { type EnvelopeTemplate, envelopeTemplate } from './envelope-template.js';

export type Envelope = NonNullable<Card['envelope']>;

/** How a card goes into an envelope, laid the way it fits best. */
export interface EnvelopeFit {
  readonly envelope: Envelope;
  /** What is left across the shorter and the longer side; less than 0 where the envelope is too small. */
  readonly room: { readonly short: number; readonly long: number };
  /** What the envelope would have to be larger one way for the card to go in easily, in floating ticks; 0 where it does. */
  readonly missing: number;
  /** It goes in easily, only just, only by force as it is too thick, or not at all. */
  readonly fit: 'roomy' | 'tight' | 'strained' | 'too small';
}

/** Envelopes for a card: the one that its sketch names, the smallest usual one, and one cut from paper. */
export interface CardEnvelopes {
  /** The size of all that has to go in: the closed card with what hangs over its edges. */
  readonly holds: Size;
  /** What it needs beyond that, because it is thick. */
  readonly thick: CardGirth;
  readonly own: EnvelopeFit | null;
  /** The smallest usual envelope that holds it with room to spare; null when none does. */
  readonly smallest: EnvelopeSize | null;
  readonly cut: EnvelopeTemplate;
  /** Papers of the sketch that the square for it is cut from, with how many of one sheet. */
  readonly papers: readonly { readonly paper: string; readonly perSheet: number }[];
}

function sides({ width, height }: Size): readonly [short: Length, long: Length] {
  return width <= height ? [width, height] : [height, width];
}

/** Least room that every card needs both ways, to be slipped in: 1/8 in (common practice, no source). */
const USUAL_ROOM = inches(1 / 8);

function fitOf(left: number, thick: number): EnvelopeFit['fit'] {
  return left < 0 ? 'too small' : left < thick ? 'strained' : left < USUAL_ROOM ? 'tight' : 'roomy';
}

/** From good to bad. */
const FITS = ['roomy', 'tight', 'strained', 'too small'] as const satisfies readonly EnvelopeFit['fit'][];

/** How a card of that size goes into `envelope`, which its thickness asks to be larger by `thick`. */
export function envelopeFit(holds: Size, thick: CardGirth, envelope: Envelope): EnvelopeFit {
  const [short, long] = sides(holds);
  const [low, wide] = sides(envelope);
  const upright = holds.width <= holds.height;
  const room = { short: low - short, long: wide - long };
  const [least, most] = upright ? [thick.across, thick.down] : [thick.down, thick.across];
  const ways = [fitOf(room.short, least), fitOf(room.long, most)];
  const needed = (more: number): number => Math.max(USUAL_ROOM, more);
  const missing = Math.max(0, needed(least) - room.short, needed(most) - room.long);
  return { envelope, room, missing, fit: [...FITS].reverse().find((fit) => ways.includes(fit)) ?? 'roomy' };
}

/** A usual envelope as a sketch names it. */
export function namedEnvelope({ name, width, height }: EnvelopeSize): Envelope {
  return { name, width, height };
}

/** Glue along every slanted edge of an envelope that is folded from paper: 1/4 in or 6 mm (common practice, no source). */
function glueOf(unit: Sketch['unit']): Length {
  return unit === 'in' ? inches(1 / 4) : millimetres(6);
}

function upTo(length: number, step: Length): Length {
  return ticks(Math.ceil(length / step) * step);
}

/** Every envelope for a card that is closed as large as `holds` and asks for more by `thick`. */
export function cardEnvelopes(sketch: Sketch, holds: Size, thick: CardGirth): CardEnvelopes {
  const step = rulerStep(sketch.unit);
  const room = (more: number): Length => ticks(Math.ceil(Math.max(USUAL_ROOM, more)));
  const [across, down] = [room(thick.across), room(thick.down)];
  const inside = { width: upTo(holds.width + across, step), height: upTo(holds.height + down, step) };
  const cut = envelopeTemplate(inside, { glue: glueOf(sketch.unit), step });
  const fits = (length: Length): number => Math.max(0, Math.floor(length / cut.square));
  const all = envelopesFor(holds).filter((each) => envelopeFit(holds, thick, each).fit === 'roomy');
  // Those of the other system are sold elsewhere.
  const roomy = all.find(({ unit }) => unit === sketch.unit) ?? all[0];
  return {
    holds,
    thick,
    own: sketch.card.envelope ? envelopeFit(holds, thick, sketch.card.envelope) : null,
    smallest: roomy ?? null,
    cut,
    papers: sketch.papers.flatMap(({ id, width, height, margins }) => {
      const wide = fits(ticks(width - margins.left - margins.right));
      const perSheet = wide * fits(ticks(height - margins.top - margins.bottom));
      return perSheet > 0 ? [{ paper: id, perSheet }] : [];
    }),
  };
}
