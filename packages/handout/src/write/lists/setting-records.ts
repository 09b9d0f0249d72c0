import { type Given, writeLength } from '@trimwell/geometry';
import type { Sketch } from '@trimwell/sketch';
import { partName } from '../steps-text.js';
import { decimals } from './piece-list.js';
import type { BatchStep, SettingRun } from './setting-steps.js';
import { givenCount, type SettingSpeech } from './setting-words.js';

/** The head of the records of a list by setting. */
export const SETTING_HEAD = [
  'number',
  'do',
  'setting',
  'setting in',
  'setting mm',
  'paper',
  'sheet',
  'part',
  'pieces',
  'at once',
  'from',
  'times',
  'gives',
  'label',
  'name',
  'width',
  'height',
  'quantity',
];

type Cell = string | number;

/** What came of a step, in the words of the records: label, name and size of a blank, or the name of a part. */
function givenCells(given: Given, { layout, step }: BatchStep, sketch: Sketch, speech: SettingSpeech): readonly Cell[] {
  const { fate, width, height } = given;
  const size = [writeLength(width, sketch.unit), writeLength(height, sketch.unit), givenCount(step, given)];
  if (fate.is === 'blank') return ['blank', speech.label(fate.blank), speech.name(fate.blank), ...size];
  if (fate.is === 'part') return ['part', partName(layout, fate.part), '', ...size];
  return [fate.keep ? 'offcut' : 'scrap', '', '', ...size];
}

function stepRecords(each: BatchStep, number: number, sketch: Sketch, speech: SettingSpeech) {
  const { paper, layout, step } = each;
  const cut = step.do === 'cut' ? step : null;
  const setting = cut ? [writeLength(cut.setting, sketch.unit), ...decimals(cut.setting)] : ['', '', ''];
  const part = step.part === null ? '' : partName(layout, step.part);
  const head: readonly Cell[] = [
    ...[number, step.do, ...setting, speech.paper(paper), layout + 1, part],
    ...[step.pieces, step.atOnce, cut?.from ?? '', cut?.times ?? ''],
  ];
  if (step.gives.length === 0) return [[...head, 'nothing', '', '', '', '', '']];
  return step.gives.map((given) => [...head, ...givenCells(given, each, sketch, speech)]);
}

/** The records of one run, its head in `SETTING_HEAD`: one for each kind of part that each of its steps gives. */
export function runRecords(
  run: SettingRun,
  number: number,
  sketch: Sketch,
  speech: SettingSpeech,
): readonly (readonly Cell[])[] {
  if (run.do !== 'knife') return run.steps.flatMap((each) => stepRecords(each, number, sketch, speech));
  const none = Array.from({ length: 5 }, () => '');
  const what = ['centre', speech.label(run.piece), speech.name(run.piece), '', '', run.count];
  return [[number, 'knife', '', '', '', ...none.slice(0, 3), run.count, '', '', '', ...what]];
}
