import { inches, millimetres, ticks } from '@trimwell/geometry';
import { expect, test } from 'vitest';
import { baseSheet, CARD_SIZES, cardSides, envelopeOf, foldsOf, usualCard } from './card-sizes.js';
import { ENVELOPE_SIZES, envelopesFor } from './envelope-sizes.js';

function room(id: string): readonly [number, number] {
  const size = CARD_SIZES.find((candidate) => candidate.id === id);
  if (!size) throw new Error(`no size ${id}`);
  const envelope = envelopeOf(size);
  return [envelope.width - size.width, envelope.height - size.height];
}

test('ids and names are told apart, every size stands upright within what can be begun', () => {
  const ids = CARD_SIZES.map(({ id }) => id);
  expect(new Set(ids).size).toBe(ids.length);
  expect(new Set(ENVELOPE_SIZES.map(({ id }) => id)).size).toBe(ENVELOPE_SIZES.length);
  for (const { unit, width, height, form } of CARD_SIZES) {
    const { least, most } = cardSides(unit);
    expect(width).toBeGreaterThanOrEqual(least);
    expect(height).toBeLessThanOrEqual(most);
    if (form === 'square') expect(width).toBe(height);
    else expect(width).toBeLessThan(height);
  }
});

test('every usual card goes into its own envelope, with 1/8 in to spare both ways', () => {
  for (const size of CARD_SIZES) {
    const own = envelopeOf(size);
    expect(envelopesFor(size), size.id).toContain(own);
    expect(envelopesFor({ width: size.height, height: size.width }), size.id).toContain(own);
  }
});

// The clearances of ISO 269 envelopes to the ISO 216 sheets they take, and of US envelopes to their cards (common practice).
test.each<readonly [string, number, number]>([
  ['iso-a6', millimetres(9), millimetres(14)],
  ['iso-a5', millimetres(14), millimetres(19)],
  ['iso-a7', millimetres(7), millimetres(9)],
  ['iso-dl', millimetres(11), millimetres(10)],
  ['us-a1', inches(1 / 8), inches(1 / 4)],
  ['us-a2', inches(1 / 8), inches(1 / 4)],
  ['us-a7', inches(1 / 4), inches(1 / 4)],
  ['us-a10', inches(1 / 4), inches(1 / 4)],
])('%s leaves the clearance that is published', (id, short, long) => {
  expect(room(id)).toEqual([short, long]);
});

test('the tightest envelope comes first, and none that is too small', () => {
  const a2 = { width: inches(5.5), height: inches(4.25) };
  expect(envelopesFor(a2)[0]?.id).toBe('us-a2');
  expect(envelopesFor({ width: inches(5.5), height: ticks(inches(4.25) + 1) }).map(({ id }) => id)).not.toContain(
    'us-a2',
  );
  expect(envelopesFor({ width: inches(12), height: inches(12) })).toEqual([]);
});

// Square envelopes are sold from 5 to 9 in, 5, 6 and 6 1/2 in most often, each for a card 1/4 in smaller (common practice).
test.each([5, 6, 6.5, 9])('the tightest envelope of a square card is the one 1/4 in larger: %s in', (envelope) => {
  const card = inches(envelope - 1 / 4);
  const american = envelopesFor({ width: card, height: card }).filter(({ unit }) => unit === 'in');
  expect(american[0]).toMatchObject({ width: inches(envelope), height: inches(envelope) });
});

test('a usual card is known upright and lying; a size of one’s own is none', () => {
  expect(usualCard({ width: inches(5.5), height: inches(4.25) })?.id).toBe('us-a2');
  expect(usualCard({ width: millimetres(105), height: millimetres(148) })?.id).toBe('iso-a6');
  expect(usualCard({ width: inches(4), height: inches(5) })).toBeNull();
});

test('a base is cut from the smallest sheet it opens on: two A2 bases are half letter sheets each way', () => {
  const a2 = { width: inches(4.25), height: inches(5.5) };
  expect(baseSheet({ ...a2, fold: 'left' }, 'in')).toEqual({ width: inches(8.5), height: inches(11) });
  expect(baseSheet({ ...a2, fold: 'top' }, 'in')).toEqual({ width: inches(8.5), height: inches(11) });
  expect(baseSheet({ width: inches(6), height: inches(6), fold: 'left' }, 'in')?.width).toBe(inches(12));
  const a5 = { width: millimetres(148), height: millimetres(210) };
  expect(baseSheet({ ...a5, fold: 'left' }, 'mm')).toEqual({ width: millimetres(210), height: millimetres(297) });
});

test('folds that no sheet is large enough for are not offered; the usual one comes first', () => {
  expect(foldsOf({ width: inches(4.25), height: inches(5.5) }, 'in')).toEqual(['left', 'top', 'none']);
  expect(foldsOf({ width: inches(5.5), height: inches(4.25) }, 'in')).toEqual(['top', 'left', 'none']);
  expect(foldsOf({ width: inches(3.5), height: inches(8.5) }, 'in')).toEqual(['left', 'none']);
  expect(foldsOf({ width: inches(12), height: inches(12) }, 'in')).toEqual(['none']);
});
