import { batchRecipe, planBatch } from '@trimwell/sketch';
import { describe, expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import type { Subject, Wish, WriteAnswer, WritePort, WriteQuestion } from './write-messages.js';
import { GivenUp, Writer } from './writer.js';

const CHOICE = { paper: 'letter', language: 'en', unit: 'in', templates: false } as const;
const PAGES: Wish = { make: 'pages', choice: CHOICE, post: null };
const PDF = {
  make: 'pdf',
  choice: CHOICE,
  post: null,
  password: null,
  created: new Date(0),
  photos: new Map(),
} as const;

function subject(): Subject {
  const sketch = sampleSketch();
  return { sketch, batch: planBatch(batchRecipe(sketch), 1), most: null, date: '2026-11-26' };
}

/** A worker in the hands of a test: what it was asked, and its answers when the test says so. */
class Hand implements WritePort {
  onmessage: WritePort['onmessage'] = null;
  readonly asked: WriteQuestion[] = [];
  ended = false;

  postMessage(question: WriteQuestion): void {
    this.asked.push(question);
  }

  terminate(): void {
    this.ended = true;
  }

  answer(data: WriteAnswer): void {
    this.onmessage?.({ data });
  }

  madePdf(number: number): void {
    this.answer({ number, kind: 'made', made: { make: 'pdf', bytes: new Uint8Array([number]) } });
  }
}

function table(): { readonly hands: Hand[]; readonly writer: Writer } {
  const hands: Hand[] = [];
  const writer = new Writer(() => {
    const hand = new Hand();
    hands.push(hand);
    return hand;
  });
  return { hands, writer };
}

describe('the writer', () => {
  test('starts its worker when it is first asked, and tells how far it is', async () => {
    const { hands, writer } = table();
    expect(hands).toHaveLength(0);
    const told: [number, number][] = [];
    const making = writer.make(subject(), PDF, { progress: (done, of) => told.push([done, of]) });
    const [hand] = hands;
    hand?.answer({ number: 1, kind: 'progress', done: 1, of: 3 });
    hand?.madePdf(1);
    expect((await making).bytes).toEqual(new Uint8Array([1]));
    expect(told).toEqual([[1, 3]]);
    hand?.answer({ number: 1, kind: 'progress', done: 2, of: 3 });
    expect(told).toHaveLength(1);
  });

  test('works on one wish at a time, and of previews that wait makes the newest only', async () => {
    const { hands, writer } = table();
    const first = writer.make(subject(), PAGES, { preview: true });
    const second = writer.make(subject(), PAGES, { preview: true });
    const file = writer.make(subject(), PDF);
    const third = writer.make(subject(), PAGES, { preview: true });
    await expect(second).rejects.toBeInstanceOf(GivenUp);
    const [hand] = hands;
    expect(hand?.asked).toHaveLength(1);
    hand?.answer({ number: 1, kind: 'failed', message: 'no fonts' });
    await expect(first).rejects.toThrow('no fonts');
    expect(hand?.asked.map(({ number }) => number)).toEqual([1, 2]);
    hand?.madePdf(2);
    expect((await file).bytes).toHaveLength(1);
    hand?.answer({ number: 3, kind: 'failed', message: 'again' });
    await expect(third).rejects.toThrow('again');
  });

  test('a file of the kind that is shown drops no preview, and a preview no file', async () => {
    const { hands, writer } = table();
    const shown = writer.make(subject(), PAGES, { preview: true });
    const waits = writer.make(subject(), PAGES, { preview: true });
    const file = writer.make(subject(), PAGES);
    const pages = { title: '', author: '', language: 'en', pages: [], looks: {} };
    for (const number of [1, 2, 3])
      hands[0]?.answer({ number, kind: 'made', made: { make: 'pages', pages, note: null } });
    expect(await Promise.all([shown, waits, file])).toHaveLength(3);
  });

  test('giving up ends the worker at once, and the next wish has another; what is looked at is made all the same', async () => {
    const { hands, writer } = table();
    const given = writer.make(subject(), PDF);
    const waits = writer.make(subject(), PAGES, { preview: true });
    writer.giveUpFiles();
    await expect(given).rejects.toBeInstanceOf(GivenUp);
    expect(hands[0]?.ended).toBe(true);
    expect(hands[1]?.asked.map(({ wish }) => wish.make)).toEqual(['pages']);
    writer.giveUpFiles();
    expect(hands[1]?.ended).toBe(false);
    hands[1]?.answer({ number: 2, kind: 'failed', message: 'enough' });
    await expect(waits).rejects.toThrow('enough');
  });

  test('a worker that died is put away, and the next wish has another', async () => {
    const { hands, writer } = table();
    const first = writer.make(subject(), PDF);
    const next = writer.make(subject(), PDF);
    hands[0]?.answer({ number: 1, kind: 'dead', message: 'not loaded' });
    await expect(first).rejects.toThrow('not loaded');
    expect(hands[0]?.ended).toBe(true);
    hands[1]?.madePdf(2);
    expect((await next).bytes).toHaveLength(1);
  });

  test('a worker that cannot start is told in words, and the next wish tries again', async () => {
    let tries = 0;
    const hand = new Hand();
    const writer = new Writer(() => {
      tries += 1;
      if (tries === 1) throw new Error('not allowed here');
      return hand;
    });
    await expect(writer.make(subject(), PDF)).rejects.toThrow('not allowed here');
    const next = writer.make(subject(), PDF);
    hand.madePdf(1);
    expect((await next).bytes).toHaveLength(1);
    writer.dispose();
    expect(hand.ended).toBe(true);
  });
});
