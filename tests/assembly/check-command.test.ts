import { readFileSync } from 'node:fs';
import { runCommand } from 'trimwell';
import { expect, test } from 'vitest';

const demo = new URL('../../demo/sketches/', import.meta.url);
const sketchText = (name: string): string => readFileSync(new URL(`${name}.json`, demo), 'utf8');

async function check(text: string, ...options: readonly string[]) {
  return runCommand(
    ['check', 'card.json', ...options],
    async () => text,
    async () => {},
  );
}

/** A demo sketch with a change to its document. */
function changed(name: string, change: (document: { card: object; pieces: object[] }) => void): string {
  const document = JSON.parse(sketchText(name));
  change(document);
  return JSON.stringify(document);
}

test.each(['hedgerow-wreath', 'star-window', 'tide-line'])(
  '%s can be built: nothing to watch, code 0',
  async (name) => {
    const { code, out, error } = await check(sketchText(name));
    expect([code, error]).toEqual([0, '']);
    expect(out).toContain('To watch: nothing.');
    expect(out).toContain('check with your post office');
    expect(out).toContain('Blades:');
  },
);

test('with a country, its letter class is told alone; one that is not in the table is refused', async () => {
  const { out } = await check(sketchText('star-window'), '--post', 'US');
  expect(out).toContain('United States: letter');
  expect(out).toContain('not of the proportion that machines take');
  expect(out).not.toContain('Germany');
  const bad = await check(sketchText('star-window'), '--post', 'XX');
  expect(bad.code).toBe(2);
  expect(bad.error).toContain('--post is "XX"; allowed: US, GB, CA, DE, IE, AU.');
});

test('what stops the build ends with 1, in words and in JSON', async () => {
  const small = changed('hedgerow-wreath', ({ card }) =>
    Object.assign(card, { envelope: { name: 'small', width: '4 in', height: '5 in' } }),
  );
  const said = await check(small);
  expect(said.code).toBe(1);
  expect(said.out).toMatch(
    /Must be changed: The envelope is smaller than the card: it needs .* more\. \(can be mended\)/,
  );
  const { code, out } = await check(small, '--json');
  expect(code).toBe(1);
  const document = JSON.parse(out);
  expect(document.trimwellCheck).toBe(1);
  expect(document.findings[0]).toMatchObject({
    code: 'envelope-too-tight',
    severity: 'stops the build',
    fix: [{ do: 'card', card: { envelope: { name: 'US A2' } } }],
  });
  expect(document.steps[0].piece).toBe('card-base');
  expect(document.post.countries).toHaveLength(6);
});

test('what no sheet gives stops the build also where the cards are as many as possible', async () => {
  const open = (papers: readonly object[]): string =>
    JSON.stringify({
      trimwell: 1,
      id: 'open',
      title: 'Open',
      unit: 'in',
      card: { width: '4 1/4 in', height: '5 1/2 in', fold: 'left', base: 'ivory' },
      papers,
      pieces: [
        {
          id: 'panel',
          name: 'Panel',
          kind: 'panel',
          x: '1/8 in',
          y: '1/8 in',
          width: 4,
          height: '5 1/4 in',
          from: 'moss',
        },
      ],
      batch: { cards: 'as many as possible' },
    });
  const paper = (id: string, width: number, height: number, more: object = {}) => ({
    id,
    name: id,
    kind: 'cardstock',
    width,
    height,
    caliper: '0.3 mm',
    gsm: 250,
    look: { pattern: 'plain', ground: '#f5f0e6', inks: ['#f0e2d2'], repeat: '1/2 in' },
    ...more,
  });
  const good = await check(open([paper('ivory', 8.5, 11), paper('moss', 12, 12)]));
  expect([good.code, good.out]).toEqual([0, expect.stringContaining('To watch: nothing.')]);
  // Nothing is limited: the scrap is too small for the panel.
  const scrap = await check(open([paper('ivory', 8.5, 11), paper('moss', 3, 3)]));
  expect([scrap.code, scrap.out]).toEqual([1, expect.stringContaining('1 of Panel cannot be cut from the sheets')]);
  // Limited by the base, of which no card can be made.
  const limited = await check(open([paper('ivory', 8.5, 11, { sheets: 5 }), paper('moss', 3, 3)]));
  expect([limited.code, limited.out]).toEqual([1, expect.stringContaining('1 of Panel cannot be cut from the sheets')]);
  const none = await check(open([paper('ivory', 8.5, 11, { sheets: 0 }), paper('moss', 12, 12)]));
  expect([none.code, none.out]).toEqual([1, expect.stringContaining('1 of Card base cannot be cut from the sheets')]);
});

test('visible and hidden areas of the JSON add up to each piece', async () => {
  const { out } = await check(sketchText('tide-line'), '--json');
  const { faces } = JSON.parse(out);
  for (const { area, visible, hidden } of faces.front.pieces) expect(visible + hidden).toBeCloseTo(area, 4);
});

test('a sketch that cannot be read is told by path, code 2', async () => {
  const broken = changed('tide-line', ({ pieces }) => Object.assign(pieces[0] ?? {}, { width: 'wide' }));
  const { code, error } = await check(broken);
  expect(code).toBe(2);
  expect(error).toContain('pieces[0].width');
});
