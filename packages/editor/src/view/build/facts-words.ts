import { formatLength, formatSize, type Length, type LengthStyle, ticks } from '@trimwell/geometry';
import { LETTER_REASONS } from '@trimwell/handout';
import { type EnvelopeSize, rulerStep } from '@trimwell/sketch';
import type { EnvelopeFit, LetterAnswer } from '@trimwell/sketch/assembly';
import type { CardView } from '../../session/card-watch.js';
import { thickText } from '../stack/stack-words.js';

/** Every sentence of the card in figures. */

export const FACT_WORDS = {
  closed: 'Closed',
  flat: 'In all',
  thick: 'Thickest',
  weight: 'Weight',
  fold: 'Fold',
  liner: 'Liner',
  stateGrain: 'Say how its paper’s grain runs',
  envelope: 'Envelope',
  paperEnvelope: 'Or from paper',
  saveEnvelope: 'Save its template (SVG)',
  post: 'Post',
  country: 'Country of the post',
  everyCountry: 'all that are known',
  heavy:
    'Heavy or dark card stock may crack where it is folded: score it, fold it with the ridge inside, and try one first.',
} as const;

function about(estimated: boolean, text: string): string {
  return estimated ? `about ${text}` : text;
}

function grams(weight: number): string {
  return weight >= 100 ? `${Math.round(weight)} g` : `${weight.toFixed(1)} g`;
}

/** To the next mark of the ruler where it lies on none, as what hangs over at a tilt. */
export function closedText({ sketch, sight }: CardView, style: LengthStyle): string {
  const { holds } = sight.envelopes;
  const step = rulerStep(sketch.unit);
  const up = (length: number): Length => ticks(Math.ceil(length / step) * step);
  const whole = { width: up(holds.width), height: up(holds.height) };
  const exact = whole.width === holds.width && whole.height === holds.height;
  const over = holds.width > sketch.card.width || holds.height > sketch.card.height;
  return `${about(!exact, formatSize(whole, style))}${over ? ', with what hangs over its edges' : ''}`;
}

/** `about 2.6 mm: the base 0.6, in front 1.6, inside 0.4`. */
export function thicknessParts({ sketch, sight }: CardView): string {
  const { height, base, front, inside, estimated } = sight.thickness;
  const part = (length: number): string => thickText(length, sketch.unit);
  const within = sketch.card.fold === 'none' ? 'behind' : 'inside';
  const parts = [
    `the base ${part(base)}`,
    ...(front > 0 ? [`in front ${part(front)}`] : []),
    ...(inside > 0 ? [`${within} ${part(inside)}`] : []),
  ];
  return `${about(estimated, part(height))}: ${parts.join(', ')}`;
}

export function weightText({ sight }: CardView): string {
  const { weight, batchGrams } = sight;
  const all = batchGrams === null ? '' : `, all cards ${grams(batchGrams)}`;
  return `${about(weight.estimated, grams(weight.grams))} a card without glue and foam${all}`;
}

export function foldText({ sight }: CardView, style: LengthStyle): string {
  const { flat, grain, perSheet, scoreFirst } = sight.fold;
  const bases = `${perSheet.bases} from a sheet`;
  if (flat.score === null) return `none; ${bases}`;
  const grains = {
    along: 'along the grain',
    across: 'across the grain',
    both: 'some along and some across the grain',
    unknown: 'grain not known',
  };
  const side = flat.score.axis === 'x' ? 'left' : 'top';
  return `${scoreFirst ? 'scored ' : ''}${formatLength(flat.score.at, style)} from the ${side} of ${formatSize(flat, style)}, ${grains[grain]}; ${bases}`;
}

/** A usual envelope with its size, in the unit that it is sold in, where its name does not say it. */
function sizedName(envelope: EnvelopeSize): string {
  const size = formatSize(envelope, { unit: envelope.unit });
  return /\d (in|mm)$/.test(envelope.name) ? envelope.name : `${envelope.name}, ${size}`;
}

const FITS: Readonly<Record<EnvelopeFit['fit'], string>> = {
  roomy: 'the card slips in easily',
  tight: 'tight',
  strained: 'the card is too thick for it',
  'too small': 'too small',
};

/** What a liner measures that makes a dark inside fit to write on; null where none is wanting. */
export function linerText({ sight }: CardView, style: LengthStyle): string | null {
  const { dark, hasLiner, liner, flat } = sight.fold;
  if (!dark || hasLiner || flat.score === null || liner.width === 0 || liner.height === 0) return null;
  return `the inside is dark: one of ${formatSize(liner, style)} leaves an even border to write within`;
}

export function envelopeText({ sight }: CardView, style: LengthStyle): string {
  const { own, smallest } = sight.envelopes;
  const usual = smallest ? sizedName(smallest) : null;
  if (!own)
    return usual
      ? `none is named; the smallest usual one is ${usual}`
      : 'none is named, and no usual one holds the card';
  const named = `${own.envelope.name}, ${formatSize(own.envelope, style)}: ${FITS[own.fit]}`;
  return own.fit === 'roomy' || !usual ? named : `${named}; the smallest usual one that fits is ${usual}`;
}

export function paperEnvelopeText({ sketch, sight }: CardView, style: LengthStyle): string {
  const { cut, papers } = sight.envelopes;
  const [first] = papers;
  const name = sketch.papers.find(({ id }) => id === first?.paper)?.name;
  const from = first && name ? `; ${first.perSheet} from a sheet of ${name}` : '';
  const points = cut.tooLong > 0 ? '; the points of its long flaps are cut off, as drawn' : '';
  return `a square of ${formatLength(cut.square, style)}, for an envelope of ${formatSize(cut.inside, style)}${from}${points}`;
}

/** `letter; a surcharge may be asked: perhaps of uneven thickness` */
export function letterText({ class: taken, surcharges, refused }: LetterAnswer): string {
  const [first] = refused;
  const why = first ? ` (no ${first.class.name}: ${first.reasons.map((each) => LETTER_REASONS[each]).join(', ')})` : '';
  const more =
    surcharges.length > 0
      ? `; a surcharge may be asked: ${surcharges.map((each) => LETTER_REASONS[each]).join(', ')}`
      : '';
  return `${taken ? taken.name : 'no letter'}${why}${more}`;
}

/** Where the limits are from: `Limits of 2023-07-09: Domestic Mail Manual …` */
export function sourceText({ country }: LetterAnswer): string {
  return `${country.edition === null ? 'Limits without a date' : `Limits of ${country.edition}`}: ${country.source}`;
}

/** What the card is in its envelope: `in its envelope about 3.1 mm and 16 g`. */
export function postedText({ sketch, sight }: CardView): string {
  const { thickness, weight } = sight.posted;
  return `In its envelope about ${thickText(thickness, sketch.unit)} thick and ${Math.ceil(weight)} g, glue and foam not weighed.`;
}
