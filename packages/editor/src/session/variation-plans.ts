import type { BatchRecipe } from '@trimwell/sketch';
import type { PlanAnswer, PlanPort } from './plan-messages.js';

/** What the planner says of one way to make the card. */
export interface WayFigures {
  /** Cards that are made. */
  readonly cards: number;
  readonly sheets: number;
  /** False when something of it cannot be cut. */
  readonly complete: boolean;
  /** The most cards that the sheets at hand give; null where nothing is limited. */
  readonly most: number | null;
}

/** What is remembered at most: every variation of a sketch, and the ready ones, after several changes of the card. */
const MOST_REMEMBERED = 400;

/** A recipe as text: equal texts have equal figures. */
export function recipeKey(recipe: BatchRecipe): string {
  return JSON.stringify(recipe);
}

/** A question that needs no work, by which the worker drops the one before it. */
function nothingToPlan({ trimmer }: BatchRecipe): BatchRecipe {
  return { cards: 1, trimmer, papers: [], parts: [], contrast: [], centres: [] };
}

/**
 * Plans several ways to make a card, one after the other, with the same work as the plan on the table, in a worker of its
 * own that is started when it is first needed. It works only while it is told that the table's own planner rests; what
 * it had begun then is dropped and begun again later.
 */
export class VariationPlans {
  readonly #known = new Map<string, WayFigures>();
  #wanted: readonly BatchRecipe[] = [];
  #resting = false;
  #port: PlanPort | null = null;
  #revision = 0;
  #current: { readonly recipe: BatchRecipe; readonly found: Omit<WayFigures, 'most'> | null } | null = null;

  /** `open` starts the worker; `onFigures` is called whenever something more is known. */
  constructor(
    private readonly open: () => PlanPort,
    private readonly onFigures: () => void,
  ) {}

  /** What is known of `recipe`, or null. */
  figures(recipe: BatchRecipe): WayFigures | null {
    return this.#known.get(recipeKey(recipe)) ?? null;
  }

  /** The ways that are to be planned, the most wanted first; those that are known are not planned again. */
  want(recipes: readonly BatchRecipe[]): void {
    this.#wanted = recipes;
    const current = this.#current && recipeKey(this.#current.recipe);
    if (this.#current && !recipes.some((recipe) => recipeKey(recipe) === current)) this.#drop();
    this.#next();
  }

  /** Whether the table's own planner rests; only then is anything planned here. */
  rest(resting: boolean): void {
    if (resting === this.#resting) return;
    this.#resting = resting;
    if (resting) this.#next();
    else this.#drop();
  }

  dispose(): void {
    this.#wanted = [];
    this.#current = null;
    if (!this.#port) return;
    this.#port.onmessage = null;
    this.#port.terminate();
    this.#port = null;
  }

  #next(): void {
    if (!this.#resting || this.#current) return;
    const recipe = this.#wanted.find((each) => !this.#known.has(recipeKey(each)));
    if (!recipe) return;
    this.#current = { recipe, found: null };
    this.#post(recipe, 'full');
  }

  #drop(): void {
    if (!this.#current) return;
    const { recipe } = this.#current;
    this.#current = null;
    this.#post(nothingToPlan(recipe), 'quick');
  }

  #post(recipe: BatchRecipe, pace: 'quick' | 'full'): void {
    if (!this.#port) {
      this.#port = this.open();
      this.#port.onmessage = ({ data }) => this.#onAnswer(data);
    }
    this.#revision += 1;
    this.#port.postMessage({ revision: this.#revision, recipe, pace });
  }

  #onAnswer(answer: PlanAnswer): void {
    if (answer.revision !== this.#revision || !this.#current) return;
    const { recipe, found } = this.#current;
    if (answer.kind === 'plan') {
      const { cards, sheets, complete } = answer.batch;
      this.#current = { recipe, found: { cards, sheets, complete } };
    } else if (answer.kind === 'limit' && found) {
      this.#finish(recipe, { ...found, most: answer.limit?.cards ?? null });
    } else if (answer.kind === 'failed') {
      this.#finish(recipe, { cards: 0, sheets: 0, complete: false, most: null });
    }
  }

  #finish(recipe: BatchRecipe, figures: WayFigures): void {
    this.#remember(recipeKey(recipe), figures);
    // The worker would go on to what else it knows to say of this recipe; nobody asks for that here.
    this.#drop();
    this.onFigures();
    this.#next();
  }

  #remember(key: string, figures: WayFigures): void {
    const [oldest] = this.#known.keys();
    if (this.#known.size >= MOST_REMEMBERED && oldest !== undefined) this.#known.delete(oldest);
    this.#known.set(key, figures);
  }
}
