import { readFile } from 'node:fs/promises';
import { batchRecipe, expectSketch, writeBatchPlan } from '@trimwell/sketch';
import { runCommand } from 'trimwell';
import { expect, test } from 'vitest';
import { PlanDesk } from '../../packages/editor/src/session/plan-desk.js';
import { planSketch } from '../../packages/embed/src/plan/plan-batch.js';
import { DEMO_SKETCHES, demoSketch, plainPlan } from './demo-sketches.js';

async function byCommand(file: string): Promise<unknown> {
  const { out } = await runCommand(
    ['plan', file, '--json'],
    (path) => readFile(path, 'utf8'),
    async () => {},
  );
  return plainPlan(out);
}

/** What the editor's planner says last, in the same thread. */
function byEditor(text: string): unknown {
  const sketch = expectSketch(JSON.parse(text));
  let last: unknown = null;
  const slices = new PlanDesk().answer({ revision: 1, recipe: batchRecipe(sketch), pace: 'full' }, (answer) => {
    if (answer.kind === 'plan' && answer.done) last = plainPlan(JSON.stringify(writeBatchPlan(answer.batch)));
  });
  for (let slice = slices.next(); !slice.done && last === null; slice = slices.next());
  return last;
}

/** What the planner of the live sketch says last, in the same thread. */
async function byEmbed(text: string): Promise<unknown> {
  let last: unknown = null;
  for await (const shown of planSketch(expectSketch(JSON.parse(text)), new Map()))
    if (shown?.done) last = plainPlan(JSON.stringify(writeBatchPlan(shown.batch)));
  return last;
}

test.each(DEMO_SKETCHES)('%s is planned alike by the editor, by the live sketch and by the command', async (name) => {
  const { file, text } = await demoSketch(name);
  const command = await byCommand(file);
  expect(command).toMatchObject({ complete: true });
  expect(byEditor(text)).toEqual(command);
  expect(await byEmbed(text)).toEqual(command);
});
