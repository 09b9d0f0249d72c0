import type { MixPlan, Sketch } from '@trimwell/sketch';

/** Rows as columns that stand one under the other, two spaces apart. */
function columns(rows: readonly (readonly string[])[]): readonly string[] {
  const widths = (rows[0] ?? []).map((_, at) => Math.max(...rows.map((row) => row[at]?.length ?? 0)));
  return rows.map((row) => `  ${row.map((cell, at) => cell.padEnd(widths[at] ?? 0)).join('  ')}`.trimEnd());
}

/**
 * A mix plan in plain words: whether all cards differ, and why not; how many blanks of each role come from each paper;
 * then card by card which paper each role takes. A card with a clash is marked.
 */
export function mixText(sketch: Sketch, plan: MixPlan): string {
  const pieceName = (id: string): string => sketch.pieces.find((piece) => piece.id === id)?.name ?? id;
  const paperName = (id: string): string => sketch.papers.find((paper) => paper.id === id)?.name ?? id;
  const cards = `${plan.cards} ${plan.cards === 1 ? 'card' : 'cards'}`;
  if (plan.roles.length === 0)
    return `${sketch.title}: ${cards}, no piece is cut from a mix of papers\n${reasons(plan)}`;
  const differ =
    plan.allDifferent === 'yes' ? (plan.cards === 1 ? '' : ', all different') : `, ${plan.different} different`;
  const used = [...new Set(plan.roles.flatMap(({ papers }) => papers.map(({ paper }) => paper)))];
  const numbers = columns([
    ['Paper', ...plan.roles.map(({ piece }) => pieceName(piece))],
    ...used.map((paper) => [
      paperName(paper),
      ...plan.roles.map(({ papers }) => String(papers.find((entry) => entry.paper === paper)?.blanks ?? '-')),
    ]),
  ]);
  const clashing = new Map<number, string[]>();
  for (const { card, pieces } of plan.clashes) {
    clashing.set(card, [...(clashing.get(card) ?? []), pieces.map(pieceName).join(' = ')]);
  }
  const deal = columns([
    ['Card', ...plan.roles.map(({ piece }) => pieceName(piece)), clashing.size > 0 ? 'Same paper' : ''],
    ...plan.deal.map((papers, card) => [
      String(card + 1),
      ...papers.map(paperName),
      (clashing.get(card) ?? []).join(', '),
    ]),
  ]);
  return `${sketch.title}: ${cards}${differ}\n${reasons(plan)}Blanks from each paper\n${numbers.join('\n')}\nPapers of each card\n${deal.join('\n')}\n`;
}

function reasons(plan: MixPlan): string {
  return plan.reasons.map((reason) => `  ${reason}\n`).join('');
}
