import { planBatch } from '../batch/batch-plan.js';
import { batchRecipe } from '../batch/batch-recipe.js';
import { kindOf, SEVERITIES } from '../check/finding.js';
import { suspectsIn } from '../check/findings.js';
import { applyEdits, EditError } from '../edit/apply-edit.js';
import type { Edge, Edit, Sketch } from '../model/sketch.js';
import { type CardFacts, cardFacts } from './card-facts.js';
import type { CardCheck, CardFinding, CardSuspect } from './card-finding.js';
import { darkInside } from './findings/dark-inside.js';
import { envelopeTooTight } from './findings/envelope-too-tight.js';
import { foldAcrossGrain } from './findings/fold-across-grain.js';
import { heldTooLittle } from './findings/held-too-little.js';
import { dearerLetter, letterSurcharge } from './findings/letters.js';
import { noUsualEnvelope } from './findings/no-usual-envelope.js';
import { cannotBeCut, cutOffTheRuler } from './findings/plan-cuts.js';

/** Every check of a card as a whole, in the order in which findings of one severity are told. */
const CHECKS: readonly CardCheck[] = [
  cannotBeCut,
  heldTooLittle,
  envelopeTooTight,
  noUsualEnvelope,
  foldAcrossGrain,
  darkInside,
  dearerLetter,
  letterSurcharge,
  cutOffTheRuler,
];

export function suspectsOf(facts: CardFacts): readonly CardSuspect[] {
  return CHECKS.flatMap((check) => check(facts));
}

interface Keyed {
  readonly code: string;
  readonly piece: string;
  readonly severity: CardFinding['severity'];
  readonly edge?: Edge;
  readonly other?: string;
}

function keyOf(found: Keyed): string {
  return `${found.piece} ${kindOf(found)}`;
}

export function rank({ severity }: Pick<Keyed, 'severity'>): number {
  return SEVERITIES.indexOf(severity);
}

/** How bad each of what was found is; the most important ranks are the lowest. */
export type Ranks = ReadonlyMap<string, number>;

export function ranksOf(found: readonly Keyed[]): Ranks {
  return new Map(found.map((each) => [keyOf(each), rank(each)]));
}

/** True for what was found before already, and no less bad. */
export function wasAsBad(known: Ranks, other: Keyed): boolean {
  return (known.get(keyOf(other)) ?? Infinity) <= rank(other);
}

/** The facts of `facts`' sketch after `edits`, its batch planned anew where it was planned; null when they cannot be made. */
function factsAfter({ sketch, options }: CardFacts, edits: readonly Edit[]): CardFacts | null {
  let mended: Sketch;
  try {
    mended = applyEdits(sketch, edits);
  } catch (error) {
    if (error instanceof EditError) return null;
    throw error;
  }
  if (!options.batch) return cardFacts(mended, options);
  const recipe = batchRecipe(mended);
  // Equal recipes have equal plans: an envelope or foam changes none.
  const same = JSON.stringify(recipe) === JSON.stringify(batchRecipe(sketch));
  return cardFacts(mended, { ...options, batch: same ? options.batch : planBatch(recipe, options.batch.cards) });
}

/** A surcharge on the cheapest letter is no worse than a dearer letter. */
const LETTERS: ReadonlySet<string> = new Set(['dearer-letter', 'no-letter']);
const CHEAPER = 'letter-surcharge';

/** True when `edits` take `suspect` away and bring nothing as bad, neither to the card nor to any piece. */
function mends(facts: CardFacts, known: Ranks, suspect: CardSuspect, edits: readonly Edit[]): boolean {
  const after = factsAfter(facts, edits);
  if (!after) return false;
  const all: readonly Keyed[] = [...suspectsOf(after), ...suspectsIn(after.sketch)];
  const harmless = (other: Keyed): boolean =>
    rank(other) > rank(suspect) || wasAsBad(known, other) || (LETTERS.has(suspect.code) && CHEAPER === other.code);
  return all.every((other) => keyOf(other) !== keyOf(suspect) && harmless(other));
}

/** Everything to watch about the card as a whole, worst first. A fix is tried before it is offered. */
export function cardFindings(facts: CardFacts): readonly CardFinding[] {
  const found = suspectsOf(facts);
  if (found.length === 0) return [];
  const known = ranksOf([...found, ...suspectsIn(facts.sketch)]);
  return SEVERITIES.flatMap((severity) => found.filter((suspect) => suspect.severity === severity)).map(
    ({ fixes, reasons = [], ...finding }): CardFinding => ({
      ...finding,
      reasons,
      fix: fixes.find((edits) => mends(facts, known, { ...finding, fixes }, edits)) ?? [],
    }),
  );
}
