import { type Given, type Length, writeLength } from '@trimwell/geometry';
import type { Sketch } from '@trimwell/sketch';
import { partName } from '../steps-text.js';
import type { BatchStep, SettingRun } from './setting-steps.js';
import { givenCount, type SettingSpeech } from './setting-words.js';

function givenDocument(given: Given, { layout, step }: BatchStep, sketch: Sketch, speech: SettingSpeech): object {
  const { fate, width, height } = given;
  const what =
    fate.is === 'blank'
      ? { is: 'blank', blank: fate.blank, label: speech.label(fate.blank), name: speech.name(fate.blank) }
      : fate.is === 'part'
        ? { is: 'part', part: partName(layout, fate.part) }
        : { is: 'offcut', keep: fate.keep };
  const size = { width: writeLength(width, sketch.unit), height: writeLength(height, sketch.unit) };
  return { ...what, ...size, quantity: givenCount(step, given) };
}

function stepDocument(each: BatchStep, sketch: Sketch, speech: SettingSpeech): object {
  const { paper, layout, step } = each;
  const length = (value: Length): string => writeLength(value, sketch.unit);
  const { margins } = step.do === 'margins' ? step : { margins: null };
  const stop = step.do === 'cut' && step.stop ? { start: step.stop.start, length: length(step.stop.length) } : null;
  return {
    do: step.do,
    paper,
    sheet: layout + 1,
    part: step.part === null ? null : partName(layout, step.part),
    width: length(step.width),
    height: length(step.height),
    pieces: step.pieces,
    atOnce: step.atOnce,
    ...(step.do === 'cut' ? { direction: step.direction, from: step.from, times: step.times, stop } : {}),
    ...(margins
      ? {
          margins: {
            top: length(margins.top),
            right: length(margins.right),
            bottom: length(margins.bottom),
            left: length(margins.left),
          },
        }
      : {}),
    gives: step.gives.map((given) => givenDocument(given, each, sketch, speech)),
  };
}

/** One run as plain data, lengths as texts. */
export function runDocument(run: SettingRun, number: number, sketch: Sketch, speech: SettingSpeech): object {
  if (run.do === 'knife')
    return { number, do: 'knife', piece: run.piece, label: speech.label(run.piece), pieces: run.count };
  const setting = run.do === 'cut' ? writeLength(run.setting, sketch.unit) : null;
  return { number, do: run.do, setting, steps: run.steps.map((each) => stepDocument(each, sketch, speech)) };
}
