import { readFileSync } from 'node:fs';
import { create } from 'fontkit';
import { beforeAll, expect, test } from 'vitest';
import { type Fonts, loadFonts } from './fonts.js';
import { letterRuns, missingLetters } from './letters.js';
import { shapeText } from './shape-text.js';
import { unpackWoff } from './unpack-woff.js';

let fonts: Fonts;
beforeAll(async () => {
  fonts = await loadFonts();
});

const runs = (text: string) => letterRuns(text, fonts.text).map(({ font, text: letters }) => [font.name, letters]);

test('a letter is set in the first font that has it', () => {
  expect(runs('Zoë Łukasz → Зоя')).toEqual([
    ...[['text', 'Zoë ']],
    ...[
      ['textMore', 'Ł'],
      ['text', 'ukasz '],
      ['wide', '→'],
      ['text', ' '],
      ['wide', 'Зоя'],
    ],
  ]);
  expect(letterRuns('Ł', fonts.heading)[0]?.font.font.postscriptName).toBe('SourceSerif4-SemiBold');
});

test('a letter and its accent are one, whichever way they are written', () => {
  expect(runs('Zoe\u0308')).toEqual([['text', 'Zoë']]);
});

test('what no font of the face has is made of what it has, or shown as its code', () => {
  expect(runs('⅛ in')).toEqual([['text', '1⁄8 in']]);
  expect(runs('4⅜ in')).toEqual([['text', '4 3⁄8 in']]);
  expect(runs('4¼ in')).toEqual([['text', '4¼ in']]);
  expect(runs('a\u2003b\tc\u200bd')).toEqual([['text', 'a b cd']]);
  expect(runs('a\u{1f331}b')).toEqual([['text', 'a[U+1F331]b']]);
  expect(missingLetters('a\u{1f331}\ufe0f⅛ →\u200d\u{1f331}漢', fonts.text)).toEqual(['\u{1f331}', '漢']);
});

test('figures around a fraction slash become a fraction, others do not', () => {
  const glyphs = (text: string) =>
    shapeText(text, 'text', fonts).flatMap((run) => run.glyphs.map(({ glyph }) => glyph.id));
  const [whole] = glyphs('1');
  const fraction = glyphs('1⁄1');
  expect(fraction[0]).not.toBe(whole);
  expect(fraction[2]).not.toBe(whole);
  expect(fraction[0]).not.toBe(fraction[2]);
  expect(glyphs('1/1')[0]).toBe(whole);
});

test('a font is unpacked to the same glyphs', () => {
  const woff = readFileSync(new URL('../../../fonts/source-serif-4-latin-400-italic.woff', import.meta.url));
  const [packed, plain] = [woff, unpackWoff(woff)].map((bytes) => create(bytes as Buffer));
  if (!packed || !plain || !('layout' in packed) || !('layout' in plain)) throw new Error('A font is a collection.');
  const drawn = (font: typeof packed) => font.layout('Fern & Dew, 3⁄8 “fi”').glyphs.map(({ path }) => path.toSVG());
  expect(plain.type).toBe('TTF');
  expect(drawn(plain)).toEqual(drawn(packed));
  expect(() => unpackWoff(new Uint8Array(100))).toThrow('A font is no WOFF file.');
});
