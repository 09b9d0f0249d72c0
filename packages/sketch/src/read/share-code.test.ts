import { deflateSync, strToU8 } from 'fflate';
import { describe, expect, test } from 'vitest';
import { sampleDocument } from '../../../../tests/kit/sample-document.js';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import type { Sketch } from '../model/sketch.js';
import { readBase64url, writeBase64url } from './base64url.js';
import { LONGEST_SHARE_CODE, readShareCode, writeShareCode } from './share-code.js';
import { SHARE_WORDS } from './share-words.js';
import { writeSketch } from './write-sketch.js';

const CODE = writeShareCode(sampleSketch());

/** The code of any text, made beside `writeShareCode`. */
function codeOf(text: string): string {
  const packed = deflateSync(strToU8(text), { dictionary: strToU8(SHARE_WORDS) });
  return `a${writeBase64url(packed)}AAAA`;
}

function refusal(code: string): string {
  const reading = readShareCode(code);
  return reading.ok ? 'read' : (reading.problems[0]?.code ?? 'no problem');
}

describe('share codes', () => {
  test('give back the very sketch', () => {
    expect(readShareCode(CODE)).toEqual({ ok: true, sketch: sampleSketch() });
  });

  test('the same sketch gives the same code, of letters that a fragment takes as they are (RFC 3986 section 3.5)', () => {
    expect(writeShareCode(sampleSketch())).toBe(CODE);
    expect(CODE).toMatch(/^a[A-Za-z0-9_-]+$/);
  });

  test('are far shorter than the document', () => {
    const { length } = JSON.stringify(writeSketch(sampleSketch()));
    expect(CODE.length).toBeLessThan(length / 4);
  });

  test('letters of any script survive', () => {
    const sketch: Sketch = { ...sampleSketch(), title: 'Zoë 花 ✂ ½', notes: 'līnija\n"quoted"' };
    expect(readShareCode(writeShareCode(sketch))).toEqual({ ok: true, sketch });
  });

  test('leave photographs out, and nothing else', () => {
    const sketch = sampleSketch();
    const papers = sketch.papers.map((paper) => ({ ...paper, look: { ...paper.look, photo: 'ab'.repeat(32) } }));
    expect(writeShareCode({ ...sketch, papers })).toBe(CODE);
    const bringing = (list: Sketch['papers']): Sketch => ({
      ...sketch,
      variations: [{ id: 'v', name: 'V', note: '', edits: list.map((paper) => ({ do: 'set-paper', paper })) }],
    });
    expect(writeShareCode(bringing(papers))).toBe(writeShareCode(bringing([...sketch.papers])));
  });

  test('a code that lost its end, or one letter anywhere, is refused and never another sketch', () => {
    for (const length of [0, 1, 2, 5, 6, 40, CODE.length - 5, CODE.length - 1])
      expect(refusal(CODE.slice(0, length))).not.toBe('read');
    for (let at = 0; at < CODE.length; at += 1) {
      const other = CODE[at] === 'Q' ? 'R' : 'Q';
      expect(refusal(CODE.slice(0, at) + other + CODE.slice(at + 1))).not.toBe('read');
    }
  });

  test('an unknown packing, strange letters and a code too long are told apart', () => {
    expect(refusal(`b${CODE.slice(1)}`)).toBe('unknown-packing');
    expect(refusal('')).toBe('unknown-packing');
    expect(refusal('a+/=')).toBe('not-a-share-code');
    expect(refusal(`a${'A'.repeat(LONGEST_SHARE_CODE)}`)).toBe('too-large');
  });

  test('a code that would unfold to 20 MB stops at 2 MB', () => {
    const reading = readShareCode(codeOf(' '.repeat(20_000_000)));
    expect(reading).toMatchObject({
      problems: [{ code: 'too-large', allowed: expect.stringContaining('unfolds to') }],
    });
  });

  test('what is unfolded passes the door that every document passes', () => {
    const document = { ...sampleDocument(), unit: 'ell' };
    const text = JSON.stringify(document);
    const sum = ((bytes: Uint8Array) => {
      let value = 0x811c9dc5;
      for (const byte of bytes) value = Math.imul(value ^ byte, 0x01000193);
      const folded = ((value >>> 24) ^ value) & 0xffffff;
      return writeBase64url(new Uint8Array([folded >> 16, (folded >> 8) & 255, folded & 255]));
    })(strToU8(text));
    const reading = readShareCode(codeOf(text).slice(0, -4) + sum);
    expect(reading).toMatchObject({ ok: false, problems: [{ path: 'unit' }] });
  });
});

describe('base64url', () => {
  test('known answers of RFC 4648 section 10, without padding', () => {
    const known = ['', 'Zg', 'Zm8', 'Zm9v', 'Zm9vYg', 'Zm9vYmE', 'Zm9vYmFy'];
    known.forEach((text, length) => {
      const bytes = strToU8('foobar'.slice(0, length));
      expect(writeBase64url(bytes)).toBe(text);
      expect(readBase64url(text)).toEqual(bytes);
    });
  });

  test('refuses what it cannot have written', () => {
    for (const text of ['A', 'AB', 'Zg==', 'Z g', 'Zm9vA']) expect(readBase64url(text)).toBeNull();
  });
});
