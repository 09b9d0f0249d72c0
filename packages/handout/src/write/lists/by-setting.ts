import { formatLength, type StepOptions } from '@trimwell/geometry';
import { type BatchPlan, counted, type Sketch } from '@trimwell/sketch';
import { cautionsFor, centreSpeech, knifeText } from '../centre-text.js';
import type { ListColumn, ListContent } from './list-content.js';
import { unitLine } from './piece-list.js';
import { runDocument } from './setting-document.js';
import { runRecords, SETTING_HEAD } from './setting-records.js';
import { type SettingRun, settingRuns } from './setting-steps.js';
import { cutText, givesText, settingSpeech } from './setting-words.js';

const COLUMNS: readonly ListColumn[] = [
  { title: 'No.', align: 'end' },
  { title: 'Setting', align: 'start' },
  { title: 'Cut', align: 'start', breaks: true },
  { title: 'Gives', align: 'start', breaks: true },
];

/**
 * The settings of the trimmer in the order of the cuts, each with all that is cut at it, of all papers together, and with
 * what that gives: for someone who sets the guide once and cuts everything at this setting. Up to `stack` sheets or parts
 * lie on one another. A blade is at work, so its caution stands with the list (in CSV there is no place for it).
 * @throws RangeError when `stack` is no whole number of 1 or more
 */
export function listBySetting(sketch: Sketch, plan: BatchPlan, options: StepOptions = {}): ListContent {
  const { unit, title } = sketch;
  const speech = settingSpeech(sketch);
  const centres = centreSpeech(sketch);
  const runs = settingRuns(plan, options);
  const settings = runs.filter((run) => run.do === 'cut').length;
  const cautions = cautionsFor(plan);
  const unmade = plan.papers.flatMap(({ paper, plan: { unmade: missing } }) =>
    missing.map(
      ({ blank, quantity, reason }) =>
        `Not made: ${quantity} of ${speech.label(blank)} from ${speech.paper(paper)}, ${reason}.`,
    ),
  );
  const rows = (run: SettingRun, index: number): readonly (readonly string[])[] => {
    const number = String(index + 1);
    if (run.do === 'knife') return [[number, 'knife', knifeText(run.piece, run.count, centres), '']];
    const set = run.do === 'cut' ? formatLength(run.setting, speech.style) : 'none';
    return run.steps.map((each, at) => [
      ...(at === 0 ? [number, set] : ['', '']),
      cutText(each, speech),
      givesText(each, speech),
    ]);
  };
  return {
    title: `${title}: ${counted(settings, 'setting')} of the trimmer for ${counted(plan.cards, 'card')}`,
    lines: [unitLine(unit), 'A line without a number is cut at the setting above it.', ...cautions, ...unmade],
    tables: [{ heading: null, lines: [], columns: COLUMNS, rows: runs.flatMap(rows) }],
    records: [SETTING_HEAD, ...runs.flatMap((run, index) => runRecords(run, index + 1, sketch, speech))],
    document: {
      trimwellSettings: 1,
      title,
      unit,
      cards: plan.cards,
      complete: plan.complete,
      stack: options.stack ?? 2,
      caution: cautions.join(' '),
      settings: runs.map((run, index) => runDocument(run, index + 1, sketch, speech)),
    },
  };
}
