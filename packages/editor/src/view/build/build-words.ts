import { breakableSize, formatLength, type Length, type LengthStyle, ticks } from '@trimwell/geometry';
import { labelPieces, stepOnto } from '@trimwell/handout';
import { CARD_BASE, type Sketch } from '@trimwell/sketch';
import type { BuildStep } from '@trimwell/sketch/assembly';
import type { CardView } from '../../session/card-watch.js';

/** Every sentence of the steps in which a card is built. */

export const BUILD_WORDS = {
  steps: 'Steps',
  heightsOf: 'with the height of the leaf after each',
  back: 'Step back',
  on: 'Next step',
  play: 'Play the steps',
  pause: 'Hold',
  stepOf: (step: number, of: number) => `Step ${step} of ${of}`,
  looking: 'The card is being looked at …',
  none: 'The card could not be looked at',
  inside: 'Open the card.',
  behind: 'Turn the card over.',
  section: 'Cut through',
  sectionAcross: 'across the card',
  sectionDown: 'down the card',
  place: 'Where it is cut through',
  highest: 'At the highest spot',
  trueHeights: 'Heights are drawn as they are.',
  heights: (times: number) => `Heights are drawn ${times} times as high.`,
  facts: 'The card in figures',
  glue: 'Glue: press each piece down from its middle outwards. Hot glue burns: touch neither nozzle nor glue, and unplug it after use.',
} as const;

/** A length that no line breaks within. */
function said(length: Length, style: LengthStyle): string {
  return formatLength(length, style).replaceAll(' ', '\u00a0');
}

const TURN = new Intl.NumberFormat('en', { maximumFractionDigits: 1 });

function letterOf(sketch: Sketch, id: string): string {
  return labelPieces(sketch).get(id) ?? '?';
}

function nameOf(sketch: Sketch, id: string): string {
  const name = id === CARD_BASE ? 'the card base' : (sketch.pieces.find((piece) => piece.id === id)?.name ?? id);
  return `${letterOf(sketch, id)} (${name})`;
}

/** `B and D`, `B, C and D`. */
function lettersText(sketch: Sketch, ids: readonly string[]): string {
  const letters = ids.map((id) => letterOf(sketch, id));
  return letters.length < 2 ? (letters[0] ?? '') : `${letters.slice(0, -1).join(', ')} and ${letters.at(-1)}`;
}

/** What shows of what the piece is glued onto on all its sides, when that is as wide everywhere; else null. */
function evenReveal(sketch: Sketch, { piece }: BuildStep, onto: string | undefined): Length | null {
  if (onto === undefined) return null;
  const upper = sketch.pieces.find(({ id }) => id === piece);
  if (upper?.tilt !== 0) return null;
  const lower = sketch.pieces.find(({ id }) => id === onto);
  if (lower !== undefined && lower.tilt !== 0) return null;
  const box = lower ?? { x: 0, y: 0, width: sketch.card.width, height: sketch.card.height };
  const sides = [
    upper.x - box.x,
    upper.y - box.y,
    box.x + box.width - upper.x - upper.width,
    box.y + box.height - upper.y - upper.height,
  ];
  const [first = 0] = sides;
  return first > 0 && sides.every((side) => side === first) ? ticks(first) : null;
}

function placeText(sketch: Sketch, step: BuildStep, onto: readonly string[], style: LengthStyle): string {
  const even = evenReveal(sketch, step, onto.length === 1 ? onto[0] : undefined);
  if (even !== null) return `so that ${said(even, style)} of ${lettersText(sketch, onto)} shows all round`;
  const { x, y, tilt } = step.place;
  const from = (length: Length, edge: string, over: string): string =>
    length >= 0 ? `${said(length, style)} from the ${edge}` : `${said(ticks(-length), style)} over the ${over}`;
  const turned =
    tilt === 0 ? '' : `, turned by ${TURN.format(Math.abs(tilt))}° ${tilt > 0 ? 'to the right' : 'to the left'}`;
  return `${from(x, 'left edge of the card', 'left edge')} and ${from(y, 'top', 'top edge')}${turned}`;
}

/** A word about a piece that is not borne all over. */
function gapText(sketch: Sketch, { bridges, restsOn }: BuildStep, onto: readonly string[]): string {
  if (bridges.length === 0) return '';
  const letters = lettersText(sketch, restsOn);
  const several = restsOn.length > 1;
  return restsOn.some((id) => onto.includes(id))
    ? ` Beside ${letters} there is a gap under it.`
    : ` It reaches over ${letters}, which ${several ? 'lie' : 'lies'} higher.`;
}

function baseText({ sketch, sight }: CardView, style: LengthStyle): string {
  const { flat, grain } = sight.fold;
  const name = nameOf(sketch, CARD_BASE);
  if (flat.score === null) return `Lay down ${name}, ${breakableSize(flat, style)}.`;
  const along = { along: ', along the grain', across: ', across the grain', both: '', unknown: '' }[grain];
  const side = flat.score.axis === 'x' ? 'left' : 'top';
  return `Score ${name}, ${said(flat.score.at, style)} from the ${side}${along}, and fold it to ${breakableSize(sketch.card, style)}.`;
}

/** What is done in a step: `Glue C (Print panel) on B, so that 1/8 in of B shows all round.` */
export function stepText(view: CardView, index: number): string {
  const { sketch, sight } = view;
  const style: LengthStyle = { unit: sketch.unit };
  const step = sight.steps[index];
  if (!step) return '';
  if (step.adhesive === null) return baseText(view, style);
  const opens =
    step.face === 'inside' && sight.steps[index - 1]?.face === 'front'
      ? `${sketch.card.fold === 'none' ? BUILD_WORDS.behind : BUILD_WORDS.inside} `
      : '';
  const foam = step.adhesive === 'foam' ? `, on foam of ${said(step.foam, style)},` : '';
  const onto = stepOnto(sketch, step);
  return `${opens}Glue ${nameOf(sketch, step.piece)}${foam} on ${lettersText(sketch, onto)}, ${placeText(sketch, step, onto, style)}.${gapText(sketch, step, onto)}`;
}
