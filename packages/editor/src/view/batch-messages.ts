import { counted, type MixPlan, type Sketch } from '@trimwell/sketch';

/** Words about the cards of a batch whose pieces draw on mixes of papers. */

/** True when some piece takes turns among several papers, so that the cards of a batch are not all alike. */
export function mixes(sketch: Sketch): boolean {
  return sketch.mixes.some(
    ({ id, papers }) => new Set(papers).size > 1 && sketch.pieces.some(({ from }) => from === id),
  );
}

export function layOutText(cards: number): string {
  return cards === 1 ? 'Lay out the card' : `Lay out all ${cards}`;
}

function listed(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

const pieceName = (sketch: Sketch, id: string): string => sketch.pieces.find((piece) => piece.id === id)?.name ?? id;
const paperName = (sketch: Sketch, id: string): string => sketch.papers.find((paper) => paper.id === id)?.name ?? id;

/** How many of the cards differ; the reason stands in `mixReasons`. */
export function differText({ cards, different, allDifferent }: MixPlan): string {
  if (cards === 1) return '1 card';
  return allDifferent === 'yes' ? `All ${cards} cards differ` : `${cards} cards in ${counted(different, 'look')}`;
}

/** Why cards are alike, and which contrasts could not be kept, by the names on the table. */
export function mixReasons(sketch: Sketch, plan: MixPlan): readonly string[] {
  const pairs = new Map<string, { readonly pieces: readonly [string, string]; readonly cards: Set<number> }>();
  for (const { card, pieces } of plan.clashes) {
    const key = pieces.join(' ');
    const known = pairs.get(key) ?? { pieces, cards: new Set<number>() };
    known.cards.add(card);
    pairs.set(key, known);
  }
  const clashes = [...pairs.values()].map(({ pieces, cards }) => {
    const where = cards.size === plan.cards ? 'every card' : counted(cards.size, 'card');
    return `${listed(pieces.map((id) => pieceName(sketch, id)))} should contrast, but share a paper on ${where}: there are too few papers.`;
  });
  // The last reason is the one about differences; it names no piece.
  return [...clashes, ...(plan.allDifferent === 'yes' ? [] : plan.reasons.slice(-1))];
}

/** One role: `Print panel: 4 Hedgerow sprig, 4 Berry dots and 4 Old letters`. */
export function roleText(sketch: Sketch, { piece, papers }: MixPlan['roles'][number]): string {
  const shares = papers
    .filter(({ blanks }) => blanks > 0)
    .map(({ paper, blanks }) => `${blanks} ${paperName(sketch, paper)}`);
  return `${pieceName(sketch, piece)}: ${listed(shares)}`;
}

/** What a reader without eyes is told of one card, counted from 0. */
export function cardText(sketch: Sketch, { roles, deal }: MixPlan, card: number): string {
  const parts = roles.map(
    ({ piece }, role) => `${pieceName(sketch, piece)} from ${paperName(sketch, deal[card]?.[role] ?? '')}`,
  );
  return `Card ${card + 1}: ${parts.join(', ')}`;
}
