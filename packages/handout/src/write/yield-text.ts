import type { BatchYield, Sketch, YieldPoint } from '@trimwell/sketch';

const cardsText = (count: number): string => `${count} ${count === 1 ? 'card' : 'cards'}`;
const sheetsText = (count: number): string => `${count} ${count === 1 ? 'sheet' : 'sheets'}`;

/** Neighbouring numbers of cards that need the same sheets, with the same to be said of them. */
interface Band {
  readonly first: number;
  readonly point: YieldPoint;
}

function bandsOf(curve: readonly YieldPoint[]): readonly Band[] {
  const needs = ({ papers, proven, atHand }: YieldPoint): string => JSON.stringify([papers, proven, atHand]);
  const bands: Band[] = [];
  for (const point of curve) {
    const last = bands.at(-1);
    if (last && needs(last.point) === needs(point)) bands[bands.length - 1] = { first: last.first, point };
    else bands.push({ first: point.cards, point });
  }
  return bands;
}

function bandText({ first, point }: Band, name: (paper: string) => string): string {
  const { cards, sheets, papers, proven, atHand } = point;
  const range = first === cards ? cardsText(cards) : `${first} to ${cardsText(cards)}`;
  const parts = papers.map((each) => `${each.sheets} ${name(each.paper)}`).join(', ');
  return `  ${range}: ${sheetsText(sheets)} (${parts})${proven ? ', the fewest' : ''}${atHand ? '' : ', more than at hand'}`;
}

function mostText(most: BatchYield | null, name: (paper: string) => string): readonly string[] {
  if (!most) return ['No paper is limited, so there is no most.'];
  const proven = most.proven ? 'the most possible' : 'no more found';
  const out = most.runsOut.length > 0 ? `; runs out first: ${most.runsOut.map(name).join(', ')}` : '';
  return [
    `The sheets at hand give ${cardsText(most.cards)}, ${proven}${out}`,
    ...most.oneMore.map(({ paper, cards, proven: sure }) => {
      const gain = cards > most.cards ? `${cardsText(cards)}, ${cards - most.cards} more` : 'no card more';
      return `  with one more sheet of ${name(paper)}: ${gain}${sure ? '' : ' (not proven the most)'}`;
    }),
  ];
}

/** The yield of a sketch in plain words: the most cards, what one more sheet gives, and the sheets for each number of cards. */
export function yieldText(sketch: Sketch, most: BatchYield | null, curve: readonly YieldPoint[]): string {
  const name = (paper: string): string => sketch.papers.find(({ id }) => id === paper)?.name ?? paper;
  const bands = bandsOf(curve).map((band) => bandText(band, name));
  const mixed = sketch.pieces.some(({ from }) =>
    sketch.mixes.some(({ id, papers }) => id === from && papers.length > 1),
  );
  const dealt = mixed ? ', mixes dealt evenly' : '';
  const needs =
    bands.length > 0 ? [`Sheets for so many cards${dealt}:`, ...bands] : ['No number of sheets makes a card.'];
  return `${[sketch.title, ...mostText(most, name), ...needs].join('\n')}\n`;
}
