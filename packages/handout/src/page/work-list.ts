import type { LengthStyle, Unit } from '@trimwell/geometry';
import { type BatchPlan, hiddenCentreOffers, realSheets, type Sketch } from '@trimwell/sketch';
import { workAfterCutting } from './after-cutting.js';
import { cautionTexts, paperTasks, type Task } from './checklist.js';
import { handoutContext } from './context.js';
import { gluingWork, plainGluing } from './gluing.js';
import { estimateMeasure } from './measure.js';
import { pageFrame } from './sheet-of-paper.js';
import { type Language, speechIn } from './speech.js';
import { usesCentres } from './uses.js';

export interface WorkListOptions {
  readonly language: Language;
  readonly unit: Unit;
  /** How inches are written. Default `fraction`. */
  readonly form?: NonNullable<LengthStyle['form']>;
}

/** All that is to be done for a batch, in words: what the handout's pages of steps say, without pages. */
export interface WorkList {
  readonly cautions: readonly string[];
  /** The papers at the trimmer, one after the other, then the work after cutting, gluing last. */
  readonly parts: readonly {
    readonly title: string;
    /** Sheets, settings and turns of a paper; empty for the work after cutting. */
    readonly note: string;
    readonly tasks: readonly Task[];
  }[];
}

/** The work of `batch`, a plan of `sketch`, as a checklist. The same sketch, plan and options give the same texts. */
export function workList(sketch: Sketch, batch: BatchPlan, { language, unit, form }: WorkListOptions): WorkList {
  const speech = speechIn(language, unit, form);
  // Words alone are wanted; the frame and the measure are there because every page has them.
  const context = handoutContext({
    sketch,
    batch,
    most: null,
    frame: pageFrame('a4'),
    speech,
    measure: estimateMeasure,
    post: null,
    // A page that shows the work to its readers must not load polygons for it.
    gluing: plainGluing(sketch),
  });
  const offers = usesCentres(batch) ? hiddenCentreOffers(sketch) : [];
  let offset = 0;
  const papers = batch.papers.map((paperPlan) => {
    const { settings, turns, tasks } = paperTasks(paperPlan, offset, offers, context);
    offset += paperPlan.plan.sheets.length;
    const { say } = speech;
    return {
      title: sketch.papers.find(({ id }) => id === paperPlan.paper)?.name ?? paperPlan.paper,
      note: say.paperSteps(say.sheets(realSheets(paperPlan.plan)), settings, turns),
      tasks,
    };
  });
  const after = [...workAfterCutting(context), ...gluingWork(context)].map(({ title, texts }) => ({
    title,
    note: '',
    tasks: texts.map((text) => ({ setting: '', text })),
  }));
  return { cautions: cautionTexts(context), parts: [...papers, ...after] };
}
