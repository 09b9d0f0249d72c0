import { formatLength, type Length, type LengthStyle, type Size, ticks } from '@trimwell/geometry';
import { CARD_BASE, type Finding, SEVERITIES, type Sketch } from '@trimwell/sketch';
import type { Assembly, BuildStep, LetterAnswer } from '@trimwell/sketch/assembly';
import { labelPieces } from '../draw/labels.js';
import { stepOnto } from '../page/gluing.js';
import { millimetresUp } from '../page/posting.js';
import { BLADE_CAUTION } from './cautions.js';
import { cardFindingSentence, findingSentence, LETTER_REASONS, SEVERITY_WORDS } from './finding-sentence.js';

/** Thicknesses in tenths of a millimetre: paper is not measured in marks of a ruler. */
function thick(length: number): string {
  return `${(Math.round(length / 64) / 10).toFixed(1)} mm`;
}

function about(estimated: boolean): string {
  return estimated ? 'about ' : '';
}

function watchLines(sketch: Sketch, found: Assembly, pieces: readonly Finding[]): readonly string[] {
  const all = [
    ...found.findings.map(({ severity, fix, ...rest }) => ({
      severity,
      fix,
      says: cardFindingSentence({ severity, fix, ...rest }, sketch),
    })),
    ...pieces.map((finding) => ({ ...finding, says: findingSentence(finding, sketch) })),
  ];
  const lines = SEVERITIES.flatMap((severity) =>
    all
      .filter((each) => each.severity === severity)
      .map(({ says, fix }) => `  ${SEVERITY_WORDS[severity]}: ${says}${fix.length > 0 ? ' (can be mended)' : ''}`),
  );
  return lines.length > 0 ? ['To watch:', ...lines] : ['To watch: nothing.'];
}

function stepLine(sketch: Sketch, step: BuildStep, style: LengthStyle): string {
  const labels = labelPieces(sketch);
  const called = (id: string): string =>
    id === CARD_BASE
      ? `${labels.get(id) ?? ''} card base`.trim()
      : `${labels.get(id) ?? '?'} ${sketch.pieces.find((piece) => piece.id === id)?.name ?? id}`;
  if (step.adhesive === null) return `  ${called(step.piece)}: ${thick(step.height)}`;
  const bridges =
    step.bridges.length > 0 ? `, with a gap over ${step.bridges.map((id) => labels.get(id) ?? id).join(', ')}` : '';
  const glue = step.adhesive === 'foam' ? `on foam of ${formatLength(step.foam, style)}` : 'glued flat';
  const from = (length: Length, edge: string): string =>
    length >= 0
      ? `${formatLength(length, style)} from the ${edge}`
      : `${formatLength(ticks(-length), style)} over the ${edge}`;
  const { x, y, tilt } = step.place;
  const turned = tilt === 0 ? '' : `, turned by ${Math.round(tilt * 10) / 10}°`;
  const at = `${from(x, 'left')}, ${from(y, 'top')}${turned}`;
  const onto = stepOnto(sketch, step);
  // A paper follows the steps of papers below it; only over a gap it matters what bears it.
  const beside = step.bridges.length === 0 || step.restsOn.some((id) => onto.includes(id));
  const borne = beside ? '' : `, borne by ${step.restsOn.map(called).join(' and ')}`;
  const inside = step.face === 'inside' ? ' inside' : '';
  return `  ${called(step.piece)}${inside}: ${at}, ${glue} on ${onto.map(called).join(' and ')}${borne}${bridges}; then ${thick(step.height)}`;
}

/** `4 3/8 in by 5 3/4 in`. */
function sizeText({ width, height }: Size, style: LengthStyle): string {
  return `${formatLength(width, style)} x ${formatLength(height, style)}`;
}

function envelopeLines({ envelopes }: Assembly, style: LengthStyle): readonly string[] {
  const { own, smallest, cut } = envelopes;
  const FITS = { roomy: 'fits', tight: 'tight', strained: 'strained', 'too small': 'too small' } as const;
  return [
    ...(own ? [`  ${own.envelope.name}, ${sizeText(own.envelope, style)}: ${FITS[own.fit]}`] : ['  none is named']),
    smallest
      ? `  the smallest usual one: ${smallest.name}, ${sizeText(smallest, { unit: smallest.unit })}`
      : '  no usual one holds it',
    `  folded from paper: a square of ${formatLength(cut.square, style)}, notches ${formatLength(cut.notch, style)} from two opposite corners along both sides of each, gives ${sizeText(cut.inside, style)}${cut.tooLong > 0 ? '; cut off the points of the long flaps' : ''}`,
  ];
}

function foldLines({ fold }: Assembly, style: LengthStyle): readonly string[] {
  const { flat, grain, perSheet } = fold;
  const where =
    flat.score === null
      ? '  flat, no fold'
      : `  ${sizeText(flat, style)} opened flat, scored ${formatLength(flat.score.at, style)} from the ${flat.score.axis === 'x' ? 'left' : 'top'}`;
  const grains = {
    along: ', along the grain',
    across: ', across the grain',
    both: ', some along and some across the grain',
    unknown: '',
  };
  const caution =
    fold.heavy || (fold.dark && flat.score)
      ? ['  Heavy or dark card stock may crack: score it, fold it into the bump, and try one first.']
      : [];
  return [
    `${where}${grains[grain]}; ${perSheet.bases} from a sheet`,
    ...(flat.score ? caution : []),
    ...(fold.dark && !fold.hasLiner ? [`  a liner for the dark inside: ${sizeText(fold.liner, style)}`] : []),
  ];
}

function letterLine({ country, class: taken, surcharges, refused }: LetterAnswer): string {
  const more =
    surcharges.length > 0
      ? `; a surcharge may be asked: ${surcharges.map((each) => LETTER_REASONS[each]).join(', ')}`
      : '';
  const first = refused[0];
  const why = first ? ` (no ${first.class.name}: ${first.reasons.map((each) => LETTER_REASONS[each]).join(', ')})` : '';
  const dated = country.edition === null ? 'limits without a date' : `limits of ${country.edition}`;
  return `  ${country.name}: ${taken ? taken.name : 'no letter'}${why}${more} [${dated}]`;
}

/** What a check of a card says, in plain words: what to watch, how it is built, how thick and heavy it is, envelope, fold and post. */
export function checkText(sketch: Sketch, found: Assembly, pieces: readonly Finding[]): string {
  const style: LengthStyle = { unit: sketch.unit };
  const { thickness, weight, batchWeight, posted } = found;
  const cards = batchWeight ? `; all cards ${about(weight.estimated)}${Math.round(batchWeight.grams)} g` : '';
  const whole = (length: number): Length => ticks(Math.round(length));
  return `${[
    sketch.title,
    ...watchLines(sketch, found, pieces),
    'Gluing, with the height of each leaf after it:',
    ...found.steps.map((step) => stepLine(sketch, step, style)),
    `Thickest spot, ${sketch.card.fold === 'none' ? 'both sides' : 'closed'}: ${about(thickness.estimated)}${thick(whole(thickness.height))}`,
    `Weight, without glue and foam: ${about(weight.estimated)}${weight.grams.toFixed(1)} g${cards}`,
    'Fold:',
    ...foldLines(found, style),
    'Envelope:',
    ...envelopeLines(found, style),
    `Post, in its envelope about ${millimetresUp(posted.thickness).toFixed(1)} mm and ${Math.ceil(posted.weight)} g, glue and foam not weighed:`,
    ...found.post.map(letterLine),
    `  ${found.notice}`,
    BLADE_CAUTION,
  ].join('\n')}\n`;
}
