import { batchRecipe, planBatch } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { makeFile } from './make-file.js';
import type { MakePort, MakeQuestion } from './make-messages.js';
import { Maker } from './maker.js';

function fakePort(): MakePort & { readonly posted: MakeQuestion[] } {
  const posted: MakeQuestion[] = [];
  return { posted, onmessage: null, onerror: null, postMessage: (question) => void posted.push(question) };
}

const sketch = sampleSketch();
const batch = planBatch(batchRecipe(sketch), 6);
const wish = { sketch, batch, wish: { make: 'piece list' } } as const;

test('the piece list is the one of the whole batch', async () => {
  const file = await makeFile(wish);
  expect(file).toMatchObject({ name: 'fern-sampler-pieces-batch.csv', type: 'text/csv' });
  expect(String(file.content).trim().split(/\r?\n/)).toHaveLength(1 + 1 + sketch.pieces.length);
});

test('each wish gets its own file, whatever the order of the answers', async () => {
  const port = fakePort();
  const maker = new Maker(() => port);
  const both = [maker.make(wish), maker.make(wish)];
  const file = (name: string) => ({ name, type: 'text/csv', content: '' });
  port.onmessage?.({ data: { number: 2, file: file('b') } });
  port.onmessage?.({ data: { number: 1, failed: 'no' } });
  await expect(both[0]).rejects.toThrow('no');
  await expect(both[1]).resolves.toMatchObject({ name: 'b' });
});

test('a worker that falls over fails what waits, and the next wish starts another', async () => {
  const ports = [fakePort(), fakePort()];
  const maker = new Maker(() => ports.shift() as MakePort);
  const [first] = ports;
  const waiting = maker.make(wish);
  first?.onerror?.('it fell over');
  await expect(waiting).rejects.toThrow('it fell over');
  void maker.make(wish);
  expect(ports).toHaveLength(0);
});

test('a page that allows no worker fails the wish in words', async () => {
  const maker = new Maker(() => {
    throw new Error('not here');
  });
  await expect(maker.make(wish)).rejects.toThrow('not here');
});
