import { formatLength, inches, type LengthStyle, millimetres, type Size, ticks } from '@trimwell/geometry';
import { CARD_BASE, type Finding, type Severity, type Sketch } from '@trimwell/sketch';
import type { CardFinding } from '@trimwell/sketch/assembly';

function nameOf(sketch: Sketch, id: string): string {
  return id === CARD_BASE ? 'Card base' : (sketch.pieces.find((piece) => piece.id === id)?.name ?? id);
}

/** What is wrong with a piece, as a sentence. */
export function findingSentence(finding: Finding, sketch: Sketch): string {
  const style: LengthStyle = { unit: sketch.unit };
  const name = nameOf(sketch, finding.piece);
  const other = finding.other === undefined ? 'the card' : nameOf(sketch, finding.other);
  const amount = formatLength(finding.amount, style);
  const edge = finding.edge ?? 'punched';
  switch (finding.code) {
    case 'radius-too-large':
      return `${name}: two corners need ${amount} more than their edge has.`;
    case 'punch-too-deep':
      return `${name}: the punch at the ${edge} cuts deeper than the piece is.`;
    case 'print-must-turn':
      return `${name} fits its sheet only when it is turned, and the print of that paper has an up.`;
    case 'print-on-its-side':
      return `${name} is tilted so far that its print does not stand upright.`;
    case 'off-the-card':
      return `${name} reaches ${amount} over the edge of the card.`;
    case 'hidden':
      return `Nothing of ${name} shows under ${other}.`;
    case 'uneven-reveal':
      return `${name}: what shows of ${other} around it is ${amount} uneven.`;
    case 'mat-out-of-true':
      return finding.amount > 0
        ? `${name} shows ${amount} unevenly around ${other}.`
        : `${name} lies askew behind ${other}.`;
    case 'corners-not-concentric':
      return `${name}: corners are ${amount} from following those of ${other}.`;
    case 'short-punched-edge':
      return `${name}: its ${edge} edge is ${amount} shorter than one repeat of the punch.`;
    case 'part-repeats':
      return `${name}: its ${edge} edge ends in part of a repeat.`;
    case 'overlap-too-small':
      return `${name} goes only ${amount} under ${other}: too little to hold well.`;
    case 'too-narrow':
      return `${name}: a strip of ${amount} is hard to hold at the trimmer. Mind your fingers.`;
    case 'off-the-ruler':
      return `${name}: its size is ${amount} off a mark of the ruler.`;
    case 'place-off-the-ruler':
      return `${name} lies ${amount} off a mark of the ruler.`;
    case 'punched-edge-covered':
      return `${name}: nothing of its punched ${edge} edge shows.`;
  }
}

/** How bad it is, in a word, for those who do not see the mark before it. */
export const SEVERITY_WORDS: Readonly<Record<Severity, string>> = {
  'stops the build': 'Must be changed',
  'looks wrong': 'Looks wrong',
  'worth knowing': 'Worth knowing',
};

/** Why a post takes a card for more, in words. */
export const LETTER_REASONS: Readonly<Record<CardFinding['reasons'][number], string>> = {
  'too-short': 'too short',
  'too-low': 'too low',
  'too-thin': 'too thin',
  'too-light': 'too light',
  'too-long': 'too long',
  'too-high': 'too high',
  'too-thick': 'too thick',
  'too-heavy': 'too heavy',
  proportion: 'not of the proportion that machines take',
  thin: 'too thin for its size',
  uneven: 'perhaps of uneven thickness, because of foam or board',
};

function reasonsText({ reasons }: CardFinding): string {
  return reasons.map((reason) => LETTER_REASONS[reason]).join(', ');
}

function inCountry({ letter }: CardFinding): string {
  return letter ? `${letter.country}: ` : '';
}

function dearerText({ letter }: CardFinding): string {
  return letter?.class ? `“${letter.class}”, not as “${letter.cheapest}”` : 'a dearer letter';
}

/** Widths that are found nearly are told up to the next 1/32 in or half a millimetre. */
const WIDTH_MARK = { in: inches(1 / 32), mm: millimetres(1 / 2) } as const;

function widthUp(width: number, unit: Sketch['unit']): string {
  const mark = WIDTH_MARK[unit];
  return formatLength(ticks(Math.max(1, Math.ceil(width / mark)) * mark), { unit });
}

/** What the envelope is too small for: where the card alone would go in, it is what hangs over its edges. */
function tooLargeText({ card }: Sketch): string {
  const sides = ({ width, height }: Size): readonly [short: number, long: number] => [
    Math.min(width, height),
    Math.max(width, height),
  ];
  const [short, long] = sides(card);
  const [low, wide] = sides(card.envelope ?? { width: ticks(0), height: ticks(0) });
  return short <= low && long <= wide ? 'the card with what reaches over its edge' : 'the card';
}

/** What is wrong with a card as a whole, as a sentence. */
export function cardFindingSentence(finding: CardFinding, sketch: Sketch): string {
  const amount = formatLength(ticks(Math.round(finding.amount)), { unit: sketch.unit });
  const name = nameOf(sketch, finding.piece);
  switch (finding.code) {
    case 'cannot-be-cut':
      return `${finding.amount} of ${name} cannot be cut from the sheets.`;
    case 'cut-off-the-ruler':
      return `A cut for ${name} is ${amount} off a mark of the ruler.`;
    case 'held-too-little':
      return `${name} is held by a strip no wider than ${widthUp(finding.amount, sketch.unit)}; the rest of it stands free.`;
    case 'envelope-too-tight':
      return finding.severity === 'stops the build'
        ? `The envelope is smaller than ${tooLargeText(sketch)}: it needs ${amount} more.`
        : finding.severity === 'looks wrong'
          ? `The card is too thick for its envelope, which needs ${amount} more.`
          : `The envelope is tight: it needs ${amount} more for the card to slip in easily.`;
    case 'no-usual-envelope':
      return 'No usual envelope holds this card: fold one from paper.';
    case 'fold-across-grain':
      return finding.severity === 'looks wrong'
        ? 'The fold runs across the grain of a heavy or dark paper: it may crack. Score it, and try one first.'
        : 'The fold runs across the grain: score it before you fold.';
    case 'dark-inside':
      return 'The inside is dark and has no liner to write on.';
    case 'no-letter':
      return `${inCountry(finding)}the post takes no letter like it: ${reasonsText(finding)}. Check with your post office.`;
    case 'dearer-letter':
      return `${inCountry(finding)}it goes as ${dearerText(finding)}: ${reasonsText(finding)}. Check with your post office.`;
    case 'letter-surcharge':
      return `${inCountry(finding)}the letter may cost a surcharge: ${reasonsText(finding)}. Check with your post office.`;
  }
}
