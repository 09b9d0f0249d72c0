import { describe, expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { decideKeep } from './decide-keep.js';
import { asKeepError, KeepError } from './keep-error.js';
import { describeSketch, type KeptSketch, searchKept } from './kept-sketch.js';
import { bytesWords, keptAdvice, keptWords, timeWords } from './kept-words.js';
import { LONG_LINK, sharedCode, shareLink } from './share-link.js';

function kept(id: string, keptAt: number, more: Partial<KeptSketch> = {}): KeptSketch {
  return { id, place: 'club', revision: 1, keptAt, aside: false, ...describeSketch(sampleSketch()), ...more };
}

describe('decideKeep', () => {
  test('nobody wrote in between: it is written', () => {
    expect(decideKeep(4, { revision: 4, document: 'old' }, 'new')).toBe('write');
  });
  test('somebody wrote another one in between: nothing is overwritten', () => {
    expect(decideKeep(4, { revision: 5, document: 'theirs' }, 'new')).toBe('conflict');
    expect(decideKeep(0, { revision: 1, document: 'theirs' }, 'new')).toBe('conflict');
  });
  test('the very same document is there: nothing is to be done', () => {
    expect(decideKeep(4, { revision: 9, document: 'new' }, 'new')).toBe('same');
  });
  test('it is there no more: it is kept anew', () => {
    expect(decideKeep(4, undefined, 'new')).toBe('anew');
  });
});

describe('searchKept', () => {
  const shelf = [
    kept('b', 20),
    kept('a', 20),
    kept('c', 30, { ...describeSketch({ ...sampleSketch(), title: 'Zoë’s Ärmel', number: 'sketch 7' }) }),
  ];
  test('no word finds all, newest first, equally old ones by id', () => {
    expect(searchKept(shelf, '  ').map(({ id }) => id)).toEqual(['c', 'a', 'b']);
  });
  test('every word must occur, without regard to capitals and accents, in title, number or any name', () => {
    const [paper] = sampleSketch().papers;
    expect(searchKept(shelf, 'zoe ARMEL').map(({ id }) => id)).toEqual(['c']);
    expect(searchKept(shelf, 'sketch 7').map(({ id }) => id)).toEqual(['c']);
    expect(searchKept(shelf, paper?.name ?? '')).toHaveLength(3);
    expect(searchKept(shelf, 'zoe teapot')).toEqual([]);
  });
});

describe('words', () => {
  const now = new Date(2031, 4, 3, 14, 20).getTime();
  test('times', () => {
    const ago = (minutes: number) => timeWords(now - minutes * 60_000, now);
    expect([ago(0), ago(1), ago(59)]).toEqual(['a moment ago', 'a minute ago', '59 minutes ago']);
    expect(ago(60)).toBe('today at 13:20');
    expect(ago(60 * 15)).toBe('2 May 2031 at 23:20');
  });
  test('a trouble is said, with a way out', () => {
    const state = { kind: 'not kept', trouble: 'full', reason: 'Quota' } as const;
    expect(keptWords(state, now)).toBe('not kept: storage is full');
    expect(keptAdvice(state, now)).toContain('save the sketch as a file');
    expect(keptAdvice({ ...state, trouble: 'failed' }, now)).toContain('Quota');
  });
  test('what is in order asks for nothing', () => {
    expect(keptWords({ kind: 'kept', at: now }, now)).toBe('kept a moment ago');
    expect(keptAdvice({ kind: 'kept', at: now }, now)).toBeNull();
    expect(keptAdvice({ kind: 'keeping' }, now)).toBeNull();
  });
  test('two versions are told apart by time', () => {
    const theirs = kept('a', now - 120_000);
    expect(keptAdvice({ kind: 'kept aside', theirs }, now)).toContain('2 minutes ago');
    expect(keptAdvice({ kind: 'newer elsewhere', theirs }, now)).toContain('2 minutes ago');
  });
  test('bytes', () => {
    expect([999, 12_400, 3_440_000, 2_000_000_000].map(bytesWords)).toEqual(['999 bytes', '12 KB', '3.4 MB', '2.0 GB']);
  });
});

test('troubles are told by the names of the errors that the specification gives', () => {
  expect(asKeepError(new DOMException('', 'QuotaExceededError')).trouble).toBe('full');
  expect(asKeepError(new DOMException('', 'SecurityError')).trouble).toBe('refused');
  expect(asKeepError(new Error('odd'))).toMatchObject({ trouble: 'failed', message: 'odd' });
  const known = new KeepError('blocked', 'x');
  expect(asKeepError(known)).toBe(known);
});

test('a link carries the sketch in its fragment, whatever fragment the page had', async () => {
  const { readShareCode } = await import('@trimwell/sketch/share-code');
  const link = await shareLink(sampleSketch(), 'https://club.example/table.html?lamp#old\nfragment');
  const url = new URL(link);
  expect(`${url.pathname}${url.search}`).toBe('/table.html?lamp');
  expect(readShareCode(sharedCode(url.hash) ?? '')).toEqual({ ok: true, sketch: sampleSketch() });
  expect(link.length).toBeLessThan(LONG_LINK);
  expect(sharedCode('#other')).toBeNull();
});
