import { type HiddenCentreOffer, hiddenCentreOffers, type PaperPlan, realSheets } from '@trimwell/sketch';
import { workAfterCutting } from './after-cutting.js';
import type { Atom, AtomGroup } from './atom.js';
import { called, calledBlank, frameWidth, type HandoutContext } from './context.js';
import { gluingWork } from './gluing.js';
import type { Pager } from './pager.js';
import { capital } from './piece-words.js';
import { POINT } from './sheet-of-paper.js';
import { stagedSteps } from './staged-steps.js';
import { stepSentence } from './step-words.js';
import { listAtoms } from './supplies.js';
import { BOX_SIDE, headingAtom, rowAtom, textAtom } from './text-atoms.js';
import { STYLES } from './text-style.js';
import { usesCentres, usesHotGlue, usesPunches } from './uses.js';

/** A line of the checklist: the guide's new setting where it is moved, and what to do. */
export interface Task {
  readonly setting: string;
  readonly text: string;
}

/** As many sheets or parts as are cut at once (common practice, no source). */
const STACK = 2;

/** Room for the settings of `tasks`, the same for all lists at the trimmer, so that they stand under each other. */
function settingRoom(tasks: readonly Task[], width: number, { measure }: HandoutContext): number {
  const { size, face } = STYLES.strong;
  const wide = tasks.map(({ setting }) => (setting === '' ? 0 : measure.width(setting, size, face) + 12 * POINT));
  return Math.round(Math.min(width * 0.3, Math.max(0, ...wide)));
}

/** Tasks as a numbered checklist, with `room` for settings. */
function taskAtoms(tasks: readonly Task[], width: number, context: HandoutContext, room = 0): readonly Atom[] {
  const { measure } = context;
  const { body, strong } = STYLES;
  const group: AtomGroup = { tag: 'L' };
  const numberX = BOX_SIDE + 6 * POINT;
  const settingX = numberX + 19 * POINT;
  const textX = settingX + room;
  return tasks.map(({ setting, text }, index) =>
    rowAtom(
      [
        {
          x: numberX,
          width: settingX - numberX - 3 * POINT,
          words: [{ text: `${index + 1}`, style: { ...body, role: 'note' } }],
        },
        ...(setting === ''
          ? []
          : [{ x: settingX, width: textX - settingX - 8 * POINT, words: [{ text: setting, style: strong }] }]),
        { x: textX, width: width - textX, words: [{ text, style: body }] },
      ],
      measure,
      { tag: 'LI', group, box: true, before: index === 0 ? 2 * POINT : 4 * POINT },
    ),
  );
}

function knifeTask(
  piece: string,
  count: number,
  offers: readonly HiddenCentreOffer[],
  context: HandoutContext,
): readonly Task[] {
  const { sketch, speech } = context;
  const offer = offers.find((each) => each.piece === piece);
  if (!offer) return [];
  const { place, coveredBy } = offer;
  const punched = Object.values(sketch.pieces.find(({ id }) => id === piece)?.punched ?? {}).some(
    (id) => id !== undefined,
  );
  const covers = speech.list(coveredBy.map((id) => called(context, id)));
  const [left, top] = [speech.length(place.x), speech.length(place.y)];
  const text = speech.say.knifeStep(count, called(context, piece), speech.size(offer), left, top, punched, covers);
  return [{ setting: '', text }];
}

export interface PaperTasks {
  readonly paperPlan: PaperPlan;
  readonly settings: number;
  readonly turns: number;
  readonly tasks: readonly Task[];
}

/** The tasks at the trimmer for one paper; `offset` is the number of layouts of the papers before it. */
export function paperTasks(
  paperPlan: PaperPlan,
  offset: number,
  offers: readonly HiddenCentreOffer[],
  context: HandoutContext,
): PaperTasks {
  const { speech } = context;
  const { say } = speech;
  const { settings, turns, stages } = stagedSteps(paperPlan, { stack: STACK });
  const tasks = stages.flatMap(({ centre, count, steps }) => [
    ...(centre === null ? [] : knifeTask(centre, count, offers, context)),
    ...steps.map((step) => ({
      setting: step.do === 'cut' && step.set ? say.setTo(speech.length(step.setting)) : '',
      text: capital(stepSentence(step, { sheet: offset + step.sheet + 1, context })),
    })),
  ]);
  return { paperPlan, settings, turns, tasks };
}

function paperAtoms(
  { paperPlan, settings, turns, tasks }: PaperTasks,
  room: number,
  context: HandoutContext,
): readonly Atom[] {
  const { sketch, speech, measure } = context;
  const { say } = speech;
  const width = frameWidth(context);
  const { paper, plan } = paperPlan;
  const unmade = plan.unmade.map(({ blank, quantity, reason }) => [
    { text: say.unmade(calledBlank(context, blank), quantity, say.unmadeReason[reason]), style: STYLES.body },
  ]);
  const title = sketch.papers.find(({ id }) => id === paper)?.name ?? paper;
  const counts = say.paperSteps(say.sheets(realSheets(plan)), settings, turns);
  return [
    headingAtom(title, 3, width, measure, { mark: { title, level: 2 } }),
    textAtom(counts, { ...STYLES.body, role: 'note' }, width, measure, { stays: tasks.length > 0 }),
    ...taskAtoms(tasks, width, context, room),
    ...(unmade.length === 0
      ? []
      : [
          textAtom(say.heads.unmade, STYLES.strong, width, measure, { before: 4 * POINT, stays: true }),
          ...listAtoms(unmade, width, context),
        ]),
  ];
}

/** The cautions that apply, blades always. */
export function cautionTexts({ sketch, batch, speech }: HandoutContext): readonly string[] {
  const { cautions } = speech.say;
  return [
    cautions.blade,
    ...(usesCentres(batch) ? [cautions.knife] : []),
    ...(usesPunches(sketch) ? [cautions.punch] : []),
    ...(usesHotGlue(sketch) ? [cautions.hotGlue] : []),
    cautions.others,
  ];
}

function afterAtoms(context: HandoutContext, width: number): readonly Atom[] {
  const { speech, measure } = context;
  const { say } = speech;
  const parts = [...workAfterCutting(context), ...gluingWork(context)];
  if (parts.length === 0) return [];
  const { after } = say.heads;
  return [
    headingAtom(after, 2, width, measure, { mark: { title: after, level: 2 } }),
    ...parts.flatMap(({ title, texts }, index) => [
      headingAtom(title, 3, width, measure, index === 0 ? { before: 2 * POINT } : {}),
      ...taskAtoms(
        texts.map((text) => ({ setting: '', text })),
        width,
        context,
      ),
    ]),
  ];
}

/** The cautions, then all that is to be done as a checklist: paper by paper at the trimmer, then what comes after. */
export function setSteps(pager: Pager, context: HandoutContext): void {
  const { batch, frame, speech, measure, sketch } = context;
  const { say } = speech;
  const width = frameWidth(context);
  const title = say.heads.steps;
  const offers = usesCentres(batch) ? hiddenCentreOffers(sketch) : [];
  let offset = 0;
  const papers = batch.papers.map((paperPlan) => {
    const tasks = paperTasks(paperPlan, offset, offers, context);
    offset += paperPlan.plan.sheets.length;
    return tasks;
  });
  const room = settingRoom(
    papers.flatMap(({ tasks }) => tasks),
    width,
    context,
  );
  const cautions = cautionTexts(context).map((text) => [{ text, style: STYLES.body }]);
  pager.breakPage();
  pager.set({
    x: frame.left,
    atoms: [
      headingAtom(title, 2, width, measure, { mark: { title, level: 1 } }),
      headingAtom(say.heads.cautions, 3, width, measure, { before: 2 * POINT }),
      ...listAtoms(cautions, width, context),
      textAtom(say.stackNote(STACK), STYLES.italic, width, measure, { before: 6 * POINT }),
      ...papers.flatMap((paper) => paperAtoms(paper, room, context)),
      ...afterAtoms(context, width),
    ],
  });
}
