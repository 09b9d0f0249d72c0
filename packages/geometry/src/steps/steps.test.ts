import fc from 'fast-check';
import { expect, test } from 'vitest';
import { randomJob } from '../../../../tests/kit/random-job.js';
import type { CutNode } from '../cut/cut-tree.js';
import type { SheetLayout } from '../cut/plan.js';
import { ticks } from '../length/length.js';
import { planCuts } from '../plan/plan-cuts.js';
import { countSettings, cutSteps } from './steps.js';

/** Jobs without pinwheels, whose parts lie there only after the last of four cuts; `performSteps` knows those. */
const edgeToEdge = randomJob().map((job) => ({ ...job, trimmer: { ...job.trimmer, stoppedCuts: false } }));

test('every cut of a plan is a step, once, and a part is cut only after the cut that made it', () => {
  fc.assert(
    fc.property(edgeToEdge, (job) => {
      const plan = planCuts(job, { work: 2_000 });
      const steps = cutSteps(plan.sheets, job.trimmer.kerf);
      const cuts = steps.reduce((sum, { copies }) => sum + copies, 0);
      expect(cuts).toBe(plan.counts.cuts);
      expect(countSettings(steps)).toBe(plan.counts.settings);
      const whole = plan.sheets.map(({ usable }) => [JSON.stringify(usable)]);
      for (const { sheet, part, direction, setting } of steps) {
        const lying = whole[sheet] ?? [];
        const at = lying.indexOf(JSON.stringify(part));
        expect(at).toBeGreaterThanOrEqual(0);
        lying.splice(at, 1);
        const side = direction === 'vertical' ? 'width' : 'height';
        const start = direction === 'vertical' ? 'x' : 'y';
        const far = {
          ...part,
          [start]: part[start] + setting + job.trimmer.kerf,
          [side]: part[side] - setting - job.trimmer.kerf,
        };
        lying.push(JSON.stringify({ ...part, [side]: setting }), JSON.stringify(far));
      }
    }),
    { numRuns: 400 },
  );
});

test('what can be cut at the setting that stands is cut before the guide is moved', () => {
  fc.assert(
    fc.property(edgeToEdge, (job) => {
      const plan = planCuts(job, { work: 2_000 });
      const steps = cutSteps(plan.sheets, job.trimmer.kerf);
      const made = new Set(plan.sheets.map(({ usable }, sheet) => `${sheet} ${JSON.stringify(usable)}`));
      const ready = steps.map(({ sheet, part }) => `${sheet} ${JSON.stringify(part)}`);
      steps.forEach((step, index) => {
        const next = steps[index + 1];
        const side = step.direction === 'vertical' ? 'width' : 'height';
        const start = step.direction === 'vertical' ? 'x' : 'y';
        const { kerf } = job.trimmer;
        made.add(`${step.sheet} ${JSON.stringify({ ...step.part, [side]: step.setting })}`);
        made.add(
          `${step.sheet} ${JSON.stringify({ ...step.part, [start]: step.part[start] + step.setting + kerf, [side]: step.part[side] - step.setting - kerf })}`,
        );
        if (!next || next.setting === step.setting) return;
        const waiting = steps
          .slice(index + 1)
          .filter((later, at) => later.setting === step.setting && made.has(ready[index + 1 + at] ?? ''));
        expect(waiting).toEqual([]);
      });
    }),
    { numRuns: 200 },
  );
});

const OFFCUT: CutNode = { is: 'offcut' };

/** A layout of one sheet, 100 x 100 ticks unless said. */
function sheetOf(tree: CutNode, width = 100, height = 100): SheetLayout {
  const usable = { x: ticks(0), y: ticks(0), width: ticks(width), height: ticks(height) };
  return { paper: 'a', copies: 1, width: ticks(width), height: ticks(height), usable, tree };
}

function halved(direction: 'vertical' | 'horizontal', at: number, first: CutNode = OFFCUT): CutNode {
  return { is: 'cut', direction, at: ticks(at), first, second: OFFCUT };
}

test('between settings that are done with, one without a turn comes first, then the longest cut', () => {
  const sheets = [
    sheetOf(halved('horizontal', 30)),
    sheetOf(halved('vertical', 40), 100, 50),
    sheetOf(halved('vertical', 20)),
  ];
  const steps = cutSteps(sheets, ticks(0));
  expect(steps.map(({ setting }) => setting)).toEqual([20, 40, 30]);
});

test('the parts of a pinwheel are cut only after its four cuts, whatever the settings', () => {
  const [x1, x2, y1, y2] = [ticks(80), ticks(90), ticks(10), ticks(20)];
  const rest = { top: OFFCUT, right: OFFCUT, bottom: OFFCUT, centre: OFFCUT };
  const left = halved('horizontal', 85);
  const tree: CutNode = { is: 'pinwheel', hand: 'clockwise', x1, x2, y1, y2, ...rest, left };
  const steps = cutSteps([sheetOf(tree)], ticks(0));
  expect(steps.map(({ part }) => part.width)).toEqual([100, 100, 100, 100, 80]);
});
