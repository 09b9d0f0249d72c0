import type { CutNode } from '../cut/cut-tree.js';
import type { CutJob } from '../cut/job.js';
import type { CutPlan } from '../cut/plan.js';
import { type Slit, turnedParts } from './performed-pinwheel.js';
import type { CutAction, Fate, StepList, TrimStep } from './trim-step.js';

/** Something that goes wrong when a step list is followed to the letter; `step` is null for what is wrong at its end. */
export interface StepProblem {
  readonly step: number | null;
  readonly problem: string;
}

interface Place {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A part on the table, once for every copy of its sheet. */
interface Lying {
  readonly place: Place;
  readonly slits: readonly Slit[];
  /** What the step that made it said of it; null for a sheet that no step has touched. */
  readonly fate: Fate | null;
}

function keyOf({ x, y, width, height }: Place): string {
  return `${x} ${y} ${width} ${height}`;
}

function sameSlits(a: readonly Slit[], b: readonly Slit[]): boolean {
  const text = (slits: readonly Slit[]): string =>
    slits
      .map(({ direction, at, start, length }) => `${direction} ${at} ${start} ${length}`)
      .sort()
      .join();
  return text(a) === text(b);
}

/** A table with virtual sheets on it, on which steps are performed one after the other. */
class Table {
  readonly problems: StepProblem[] = [];
  readonly #job: CutJob;
  readonly #plan: CutPlan;
  readonly #allowed: number;
  readonly #parts: Map<string, Lying>[];
  #step: number | null = null;
  #guide: number | null = null;
  #way: string | null = null;
  settings = 0;
  turns = 0;

  constructor(job: CutJob, plan: CutPlan, stack: number) {
    this.#job = job;
    this.#plan = plan;
    this.#allowed = stack;
    this.#parts = plan.sheets.map(({ width, height }) => {
      const place = { x: 0, y: 0, width, height };
      return new Map([[keyOf(place), { place, slits: [], fate: null }]]);
    });
  }

  wrong(problem: string): void {
    this.problems.push({ step: this.#step, problem });
  }

  perform(step: TrimStep, index: number): void {
    this.#step = index;
    const found = this.#find(step);
    if (step.do === 'cut') this.#cut(step, found);
    else if (step.do === 'margins') this.#margins(step, found);
    else this.#put(step, found, [{ x: 0, y: 0, width: step.width, height: step.height }]);
    this.#step = null;
  }

  /** The parts that a step names, as far as they lie there and may be handled together. */
  #find(step: TrimStep): readonly Lying[] {
    const { sheet, part, width, height, places, pieces, atOnce, stacks } = step;
    const lying = this.#parts[sheet];
    const layout = this.#plan.sheets[sheet];
    if (!lying || !layout) {
      this.wrong(`there is no layout ${sheet}`);
      return [];
    }
    if (pieces !== places.length * layout.copies)
      this.wrong(`${pieces} pieces told, ${places.length} places on ${layout.copies} sheets`);
    if (atOnce < 1 || atOnce > this.#allowed) this.wrong(`a stack of ${atOnce}, at most ${this.#allowed} are allowed`);
    if (stacks !== Math.ceil(pieces / atOnce)) this.wrong(`${stacks} stacks of ${atOnce} for ${pieces} pieces`);
    const found = places.flatMap((place) => {
      const known = lying.get(keyOf(place));
      if (!known) this.wrong(`there is no part ${keyOf(place)} on sheet ${sheet}`);
      return known ? [known] : [];
    });
    if (new Set(places.map(keyOf)).size < places.length) this.wrong('one part is named twice');
    const [first] = found;
    for (const { place, slits, fate } of found) {
      if (place.width !== width || place.height !== height || (first && !sameSlits(slits, first.slits)))
        this.wrong('a stack of unlike parts');
      if (fate?.is === 'blank') this.wrong(`cuts a finished blank, ${fate.blank}`);
      if (fate?.is === 'offcut') this.wrong('cuts an offcut that was put away');
      const number = fate?.is === 'part' ? fate.part : null;
      if (fate?.is !== 'blank' && fate?.is !== 'offcut' && number !== part)
        this.wrong(`part ${part} is named, part ${number} lies there`);
    }
    return found;
  }

  #cut(step: CutAction, found: readonly Lying[]): void {
    const { direction, setting, stop } = step;
    if (step.set !== (setting !== this.#guide)) this.wrong(`the guide stands at ${this.#guide}, not as told`);
    if (step.turn !== (this.#way !== null && this.#way !== direction)) this.wrong('the work lies the other way round');
    if (step.set) this.settings += 1;
    if (step.turn) this.turns += 1;
    this.#guide = setting;
    this.#way = direction;
    if (!Number.isSafeInteger(step.times) || step.times < 1 || (stop && step.times !== 1))
      this.wrong(`cut ${step.times} times`);
    if ((direction === 'vertical') === (step.from === 'top'))
      this.wrong(`a ${direction} cut set from the ${step.from}`);
    if (stop) this.#slit(step, stop, found);
    else if (step.from === 'right') this.wrong('only a pinwheel is cut from its right');
    else {
      const made = found.flatMap(({ place, slits }) => {
        if (slits.length > 0) this.wrong('a part is cut through before its pinwheel is done');
        return this.#strips(step, place);
      });
      this.#put(step, found, made);
    }
  }

  /** Cuts strips off `place`; what the blade eats whole is gone. */
  #strips({ direction, setting, times }: CutAction, place: Place): readonly Place[] {
    const { kerf } = this.#job.trimmer;
    const made: Place[] = [];
    let rest = place;
    for (let cut = 0; cut < times; cut += 1) {
      const { x, y, width, height } = rest;
      const vertical = direction === 'vertical';
      this.#limits(vertical ? width : height, setting, vertical ? height : width);
      made.push(vertical ? { x, y, width: setting, height } : { x, y, width, height: setting });
      rest = vertical
        ? { x: x + setting + kerf, y, width: width - setting - kerf, height }
        : { x, y: y + setting + kerf, width, height: height - setting - kerf };
      if (rest.width < 0 || rest.height < 0) return made;
    }
    return [...made, rest];
  }

  #limits(across: number, at: number, long: number): void {
    const { bladeLength, narrowestStrip, thinnestTrim, kerf, rulerStep } = this.#job.trimmer;
    const rest = across - at - kerf;
    if (at <= 0 || at >= across || rest < 0) this.wrong(`a cut at ${at} misses a part ${across} wide`);
    if (bladeLength !== null && long > bladeLength) this.wrong(`a cut ${long} long, the blade is ${bladeLength}`);
    if (Math.max(at, rest) < narrowestStrip) this.wrong(`a cut at ${at} leaves nothing to hold`);
    if (Math.min(at, rest) > 0 && Math.min(at, rest) < thinnestTrim) this.wrong(`a cut at ${at} trims too little`);
    if (rulerStep !== null && at % rulerStep !== 0) this.wrong(`a cut at ${at} is off the ruler`);
  }

  #slit(step: CutAction, { start, length }: Slit | NonNullable<CutAction['stop']>, found: readonly Lying[]): void {
    const { direction, setting, sheet } = step;
    const { stoppedCuts, kerf } = this.#job.trimmer;
    if (!stoppedCuts || kerf !== 0) this.wrong('a stopped cut, which this trimmer does not make');
    const made: Place[] = [];
    const parted: Lying[] = [];
    for (const lying of found) {
      const { x, y, width, height } = lying.place;
      const at = step.from === 'right' ? width - setting : setting;
      this.#limits(direction === 'vertical' ? width : height, setting, length);
      const slits = [...lying.slits, { direction, at, start, length }];
      const parts = turnedParts(slits, width, height);
      if (slits.length === 4 && !parts) this.wrong('four stopped cuts that do not meet as a pinwheel');
      this.#parts[sheet]?.set(keyOf(lying.place), { ...lying, slits });
      if (!parts) continue;
      parted.push(lying);
      for (const [left, top, right, bottom] of parts)
        made.push({ x: x + left, y: y + top, width: right - left, height: bottom - top });
    }
    this.#put(step, parted, made);
  }

  #margins(step: Extract<TrimStep, { do: 'margins' }>, found: readonly Lying[]): void {
    const layout = this.#plan.sheets[step.sheet];
    const paper = this.#job.papers.find(({ id }) => id === layout?.paper);
    if (!paper) {
      this.wrong(`there is no paper ${layout?.paper}`);
      return;
    }
    const { top, right, bottom, left } = step.margins;
    const told = paper.margins;
    if (top !== told.top || right !== told.right || bottom !== told.bottom || left !== told.left)
      this.wrong('the margins are not those of the paper');
    const made = found.map(({ place: { x, y, width, height } }) => ({
      x: x + left,
      y: y + top,
      width: width - left - right,
      height: height - top - bottom,
    }));
    this.#put(step, found, made);
  }

  /** Takes what was cut off the table and lays down what was made, as the step says what becomes of it. */
  #put(step: TrimStep, gone: readonly Lying[], made: readonly Place[]): void {
    const lying = this.#parts[step.sheet];
    if (!lying) return;
    for (const { place } of gone) lying.delete(keyOf(place));
    const told = new Map<string, Fate>();
    for (const { fate, width, height, places } of step.gives) {
      for (const place of places) {
        if (place.width !== width || place.height !== height) this.wrong('unlike parts are said to be alike');
        if (told.has(keyOf(place))) this.wrong(`part ${keyOf(place)} is told twice`);
        told.set(keyOf(place), fate);
      }
    }
    for (const place of made) {
      if (place.width === 0 || place.height === 0) continue;
      const fate = told.get(keyOf(place));
      told.delete(keyOf(place));
      if (!fate) this.wrong(`nothing is said of the part ${keyOf(place)}`);
      else if (fate.is === 'blank') this.#finish(step.sheet, fate.blank, fate.turned, place);
      lying.set(keyOf(place), { place, slits: [], fate: fate ?? null });
    }
    for (const key of told.keys()) this.wrong(`part ${key} does not come off`);
  }

  #finish(sheet: number, id: string, turned: boolean, { width, height }: Place): void {
    const blank = this.#job.blanks.find((candidate) => candidate.id === id);
    const paper = this.#job.papers.find((candidate) => candidate.id === this.#plan.sheets[sheet]?.paper);
    if (!blank || !paper) {
      this.wrong(`there is no blank ${id}, or no paper for it`);
      return;
    }
    const [w, h] = turned ? [blank.height, blank.width] : [blank.width, blank.height];
    if (w !== width || h !== height) this.wrong(`${id} comes out ${width} x ${height}, it is ${w} x ${h}`);
    if (turned && (!blank.turn || paper.directional)) this.wrong(`${id} must not be turned`);
    if (blank.papers && !blank.papers.includes(paper.id)) this.wrong(`${id} must not come from ${paper.id}`);
  }

  /** What is wrong when all steps are done. */
  end(steps: StepList): void {
    if (steps.settings !== this.settings) this.wrong(`${steps.settings} settings told, ${this.settings} made`);
    if (steps.turns !== this.turns) this.wrong(`${steps.turns} turns told, ${this.turns} made`);
    const made = new Map<string, number>();
    this.#plan.sheets.forEach(({ tree, copies }, sheet) => {
      const here = new Map<string, number>();
      for (const { place, fate } of this.#parts[sheet]?.values() ?? []) {
        if (fate === null || fate.is === 'part') this.wrong(`sheet ${sheet}: part ${keyOf(place)} is never cut`);
        else if (fate.is === 'blank') here.set(fate.blank, (here.get(fate.blank) ?? 0) + 1);
      }
      const wanted = new Map<string, number>();
      countLeaves(tree, wanted);
      for (const id of new Set([...here.keys(), ...wanted.keys()])) {
        const [got, want] = [here.get(id) ?? 0, wanted.get(id) ?? 0];
        if (got !== want) this.wrong(`sheet ${sheet} gives ${got} of ${id}, the plan ${want}`);
        made.set(id, (made.get(id) ?? 0) + got * copies);
      }
    });
    for (const { id, quantity } of this.#job.blanks) {
      const left = this.#plan.unmade.reduce((sum, { blank, quantity: q }) => sum + (blank === id ? q : 0), 0);
      const wanted = quantity * this.#plan.sets - left;
      if ((made.get(id) ?? 0) !== wanted) this.wrong(`${made.get(id) ?? 0} of ${id} are made, ${wanted} wanted`);
    }
  }
}

function countLeaves(node: CutNode, counts: Map<string, number>): void {
  if (node.is === 'blank') counts.set(node.blank, (counts.get(node.blank) ?? 0) + 1);
  else if (node.is === 'cut') for (const part of [node.first, node.second]) countLeaves(part, counts);
  else if (node.is === 'pinwheel')
    for (const part of [node.top, node.right, node.bottom, node.left, node.centre]) countLeaves(part, counts);
}

/**
 * Performs `steps` on virtual sheets, and tells all that goes wrong: a finished blank or an offcut is cut, a part is
 * not there yet, a cut breaks a rule of the trimmer, a stack is too high or of unlike parts, the guide or the work is not
 * as told, a part is left uncut, blanks are missing or too many. It shares only types with the planner and the step
 * list. Empty when the steps end with exactly the plan's blanks, all of the job's but the unmade.
 */
export function performSteps(job: CutJob, plan: CutPlan, steps: StepList): readonly StepProblem[] {
  const table = new Table(job, plan, steps.stack);
  if (!Number.isSafeInteger(steps.stack) || steps.stack < 1) table.wrong(`stacks of ${steps.stack}`);
  steps.steps.forEach((step, index) => {
    table.perform(step, index);
  });
  table.end(steps);
  return table.problems;
}
