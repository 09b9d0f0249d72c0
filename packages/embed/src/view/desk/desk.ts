import type { LengthStyle } from '@trimwell/geometry';
import { dayOf, type Photos, type WorkList } from '@trimwell/handout';
import type { Sketch } from '@trimwell/sketch';
import type { PlanAnswer } from '../../plan/plan-messages.js';
import { planner } from '../../plan/planner.js';
import { applyChoices, offeredVariations } from '../../state/apply-choices.js';
import {
  type Choices,
  isUnchosen,
  noChoices,
  readChoicesCode,
  styleOf,
  writeChoicesCode,
} from '../../state/choices.js';
import { linkWithChoices } from '../../state/choices-link.js';
import { readRemembered } from '../../state/remembered.js';
import type { DeskHost } from '../desk-host.js';
import { patch } from '../patch.js';
import type { DeskActs, DeskState, Draft, Fold, Parts, ScrapForm } from './desk-state.js';
import { DESK_STYLES } from './desk-styles.js';
import { deskView } from './desk-view.js';
import { DESK_WORDS as WORDS } from './desk-words.js';
import { keep } from './memory.js';
import { NO_PLAN, type PlanState, planName } from './plan-state.js';
import { withoutScrap } from './scraps.js';
import type { Photo } from './take-photo.js';

/** Pictures that are drawn at first, and how many more at a time. */
const FEW = { sheets: 12, cards: 12 } as const;

let deskStyles: CSSStyleSheet | null = null;

function styles(): CSSStyleSheet {
  if (!deskStyles) {
    deskStyles = new CSSStyleSheet();
    deskStyles.replaceSync(DESK_STYLES);
  }
  return deskStyles;
}

/**
 * The reader's desk of one sketch: what they have chosen, the plan that follows, and what is made of it. All that is shown
 * is made from one state, anew after every change.
 */
export class Desk {
  readonly #host: DeskHost;
  readonly #asker = planner.asker((answer) => this.#planned(answer));
  readonly #photos = new Map<string, Photo>();
  #choices: Choices;
  #sketch: Sketch;
  #asked: Sketch | null = null;
  #plan: PlanState = NO_PLAN;
  #done: { of: string; steps: ReadonlySet<number> } = { of: '', steps: new Set() };
  #work: { readonly key: string; readonly list: WorkList } | null = null;
  #folds: ReadonlySet<Fold> = new Set<Fold>(['guide']);
  #parts: Parts = { guide: null, every: null, steps: null };
  #drafts: ReadonlyMap<string, Draft> = new Map();
  #scrapForm: ScrapForm | null = null;
  #most = FEW as { readonly sheets: number; readonly cards: number };
  #page: 'letter' | 'a4';
  #said = '';
  #open = false;

  constructor(host: DeskHost) {
    this.#host = host;
    this.#choices = noChoices(host.document.id);
    this.#sketch = host.document;
    this.#page = host.style.unit === 'mm' ? 'a4' : 'letter';
    const { root } = host;
    if (!root.adoptedStyleSheets.includes(styles())) root.adoptedStyleSheets = [...root.adoptedStyleSheets, styles()];
  }

  /** Takes up what a link says, or else what this browser remembers; what is for another sketch is left alone. */
  recall(code: string | null, remembered: string | null): void {
    const kept = readRemembered(remembered);
    if (kept.done) this.#done = { of: kept.done.of, steps: new Set(kept.done.steps) };
    const reading = code === null ? null : readChoicesCode(code);
    const linked = reading?.ok && reading.choices.sketch === this.#host.document.id ? reading.choices : null;
    const choices = linked ?? (kept.choices?.sketch === this.#host.document.id ? kept.choices : null);
    if (choices) this.#choices = choices;
    this.#apply(reading && !reading.ok ? WORDS.codeNotRead : '');
  }

  /** The unit and form that the reader has picked. */
  chooseStyle({ unit, form = 'fraction' }: LengthStyle): void {
    this.#drafts = new Map();
    this.#choose({ unit, form });
  }

  /** The desk was opened or closed; what it needs is loaded when it is first seen. */
  opened(open: boolean): void {
    this.#open = open;
    if (!open) return;
    this.#ask();
    this.#bring('guide');
    this.#render();
  }

  /** Nothing is wanted of the planner any more. */
  leave(): void {
    this.#asker.leave();
    this.#asked = null;
  }

  #style(): LengthStyle {
    return styleOf(this.#choices, this.#host.style.unit);
  }

  #addresses(): Photos {
    return new Map([...this.#photos.values()].map(({ id, address }) => [id, address]));
  }

  #choose(change: Partial<Choices>): void {
    this.#choices = { ...this.#choices, ...change };
    this.#apply('');
    this.#keep();
    this.#host.chosen(writeChoicesCode(this.#choices));
  }

  #keep(): void {
    const done = this.#done.steps.size === 0 ? null : { of: this.#done.of, steps: [...this.#done.steps] };
    const choices = isUnchosen(this.#choices) ? null : this.#choices;
    if (!keep(this.#host.document.id, choices || done ? { choices, done } : null)) this.#said = WORDS.notKept;
    this.#render();
  }

  #apply(note: string): void {
    const photos = new Map([...this.#photos].map(([paper, { id }]) => [paper, id]));
    const { sketch, problems } = applyChoices(this.#host.document, this.#choices, photos);
    this.#sketch = sketch;
    this.#host.show(sketch, this.#style(), this.#addresses(), note || (problems.length > 0 ? WORDS.left : ''));
    if (this.#open) this.#ask();
    this.#render();
  }

  #ask(): void {
    if (this.#asked === this.#sketch) return;
    this.#asked = this.#sketch;
    this.#plan = { ...this.#plan, searching: true, failure: null };
    this.#asker.ask(this.#sketch);
  }

  #planned(answer: PlanAnswer): void {
    const sketch = this.#asked;
    if (!sketch) return;
    this.#plan =
      answer.kind === 'plan'
        ? { made: { sketch, batch: answer.batch }, searching: !answer.done, failure: null }
        : { ...this.#plan, searching: false, failure: answer.message };
    // What could not be worked out may be asked for again.
    if (answer.kind === 'failed') this.#asked = null;
    this.#render();
  }

  #bring(part: keyof Parts): void {
    if (this.#parts[part]) return;
    const loads = {
      guide: () => import('./guide-part.js').then((guide) => ({ guide })),
      every: () => import('./every-part.js').then((every) => ({ every })),
      steps: () => import('./steps-part.js').then((steps) => ({ steps })),
    };
    loads[part]().then(
      (loaded) => {
        this.#parts = { ...this.#parts, ...loaded };
        this.#render();
      },
      () => this.#say(WORDS.notLoaded),
    );
  }

  #say(said: string): void {
    this.#said = said;
    this.#render();
  }

  #workList(): WorkList | null {
    const { made } = this.#plan;
    const { steps } = this.#parts;
    if (!made || !steps || !this.#folds.has('steps')) return null;
    const { unit, form = 'fraction' } = this.#style();
    const of = planName(made.batch);
    const key = JSON.stringify([of, unit, form, made.sketch.pieces.map(({ id, name, from }) => [id, name, from])]);
    if (this.#work?.key !== key)
      this.#work = { key, list: steps.workList(made.sketch, made.batch, { language: 'en', unit, form }) };
    return this.#work.list;
  }

  #state(): DeskState {
    const { made } = this.#plan;
    const ticked = made && this.#done.of === planName(made.batch) ? this.#done.steps : new Set<number>();
    return {
      document: this.#host.document,
      sketch: this.#sketch,
      style: this.#style(),
      choices: this.#choices,
      offered: offeredVariations(this.#host.document),
      plan: this.#plan,
      photos: this.#addresses(),
      photographed: new Set(this.#photos.keys()),
      folds: this.#folds,
      parts: this.#parts,
      drafts: this.#drafts,
      scrapForm: this.#scrapForm,
      done: ticked,
      work: this.#workList(),
      most: this.#most,
      page: this.#page,
      said: this.#said,
      link: linkWithChoices(location.href, writeChoicesCode(this.#choices)),
    };
  }

  #render(): void {
    if (this.#open) patch(this.#host.place, deskView({ state: this.#state(), acts: this.#acts }));
  }

  readonly #acts: DeskActs = {
    choose: (change) => this.#choose(change),
    toggle: (fold, open) => {
      if (this.#folds.has(fold) === open) return;
      const others = [...this.#folds].filter((each) => each !== fold);
      this.#folds = new Set(open ? [...others, fold] : others);
      if (open && (fold === 'every' || fold === 'steps' || fold === 'guide')) this.#bring(fold);
      this.#render();
    },
    draft: (key, draft) => {
      const drafts = new Map(this.#drafts);
      if (draft) drafts.set(key, draft);
      else drafts.delete(key);
      this.#drafts = drafts;
      this.#render();
    },
    photograph: (paper, file) => void this.#photograph(paper, file),
    scrapForm: (form) => {
      this.#scrapForm = form;
      this.#render();
    },
    removeScrap: (index) => this.#choose(withoutScrap(this.#choices, index)),
    step: (step, done) => {
      const { made } = this.#plan;
      if (!made) return;
      const steps = new Set(this.#state().done);
      if (done) steps.add(step);
      else steps.delete(step);
      this.#done = { of: planName(made.batch), steps };
      this.#keep();
    },
    more: (of) => {
      this.#most = { ...this.#most, [of]: this.#most[of] + 2 * FEW[of] };
      this.#render();
    },
    page: (page) => {
      this.#page = page;
      this.#render();
    },
    make: (make) => void this.#make(make),
    print: () => {
      import('./print-part.js').then(
        ({ printVersion }) => printVersion(this.#state(), this.#host.root),
        () => this.#say(WORDS.notLoaded),
      );
    },
    copy: (field) => {
      field.select();
      const copied = navigator.clipboard?.writeText(field.value) ?? Promise.reject(new Error('no clipboard'));
      copied.then(
        () => this.#say(WORDS.copied),
        () => this.#say(WORDS.notCopied),
      );
    },
    forget: () => {
      for (const { address } of this.#photos.values()) URL.revokeObjectURL(address);
      this.#photos.clear();
      this.#drafts = new Map();
      this.#scrapForm = null;
      this.#done = { of: '', steps: new Set() };
      this.#choices = noChoices(this.#host.document.id);
      this.#apply('');
      this.#keep();
      this.#host.chosen(writeChoicesCode(this.#choices));
    },
  };

  async #photograph(paper: string, file: File): Promise<void> {
    try {
      const { takePhoto } = await import('./take-photo.js');
      const photo = await takePhoto(file);
      const before = this.#photos.get(paper);
      this.#photos.set(paper, photo);
      if (before) URL.revokeObjectURL(before.address);
      this.#apply('');
    } catch (error) {
      this.#say(error instanceof Error ? error.message : WORDS.photographFailed);
    }
  }

  async #make(make: 'handout' | 'piece list'): Promise<void> {
    const { made } = this.#plan;
    if (!made) {
      this.#say(WORDS.noPlanYet);
      return;
    }
    this.#say(WORDS.making);
    try {
      const [{ maker }, { saveFile }] = await Promise.all([import('../../make/maker.js'), import('./save-file.js')]);
      const photos = new Map([...this.#photos.values()].map(({ id, bytes }) => [id, bytes]));
      const details = {
        paper: this.#page,
        unit: this.#style().unit,
        date: dayOf(new Date()),
        created: new Date(),
        photos,
      };
      const file = await maker.make({ ...made, wish: make === 'handout' ? { make, ...details } : { make } });
      saveFile(file);
      this.#say(WORDS.saved(file.name));
    } catch (error) {
      this.#say(WORDS.makingFailed(error instanceof Error ? error.message : String(error)));
    }
  }
}
