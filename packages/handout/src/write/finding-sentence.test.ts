import { inches, ticks } from '@trimwell/geometry';
import { CARD_BASE, type Finding, type FindingCode } from '@trimwell/sketch';
import { assembly, type CardFinding, type CardFindingCode } from '@trimwell/sketch/assembly';
import { expect, test } from 'vitest';
import { flatCard } from '../../../../tests/kit/flat-card.js';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { cardFindingSentence, findingSentence, LETTER_REASONS } from './finding-sentence.js';

const sketch = sampleSketch();

/** Every code, so that a new one is not forgotten here: the record is checked by its type. */
const PIECE_CODES: Readonly<Record<FindingCode, true>> = {
  'radius-too-large': true,
  'punch-too-deep': true,
  'print-must-turn': true,
  'off-the-card': true,
  'print-on-its-side': true,
  hidden: true,
  'uneven-reveal': true,
  'mat-out-of-true': true,
  'corners-not-concentric': true,
  'short-punched-edge': true,
  'part-repeats': true,
  'overlap-too-small': true,
  'too-narrow': true,
  'off-the-ruler': true,
  'place-off-the-ruler': true,
  'punched-edge-covered': true,
};
const CARD_CODES: Readonly<Record<CardFindingCode, true>> = {
  'cannot-be-cut': true,
  'cut-off-the-ruler': true,
  'held-too-little': true,
  'envelope-too-tight': true,
  'no-usual-envelope': true,
  'fold-across-grain': true,
  'dark-inside': true,
  'no-letter': true,
  'dearer-letter': true,
  'letter-surcharge': true,
};

test('each finding about a piece has a sentence of its own that names it', () => {
  const codes = Object.keys(PIECE_CODES) as readonly FindingCode[];
  const says = codes.map((code): string => {
    const finding: Finding = {
      code,
      severity: 'looks wrong',
      piece: 'strip',
      edge: 'top',
      amount: ticks(1016),
      fix: [],
    };
    return findingSentence(finding, sketch);
  });
  expect(new Set(says).size).toBe(codes.length);
  for (const text of says) expect(text).toMatch(/^.*Strip.*\.$/);
});

test('each finding about the card has a sentence of its own, and one about post says to ask there', () => {
  const codes = Object.keys(CARD_CODES) as readonly CardFindingCode[];
  const says = codes.map((code): string => {
    const finding: CardFinding = {
      code,
      severity: 'worth knowing',
      piece: CARD_BASE,
      place: null,
      amount: 1016,
      reasons: ['too-thick', 'proportion'],
      fix: [],
    };
    return cardFindingSentence(finding, sketch);
  });
  expect(new Set(says).size).toBe(codes.length);
  for (const [at, text] of says.entries())
    if (codes[at]?.includes('letter')) {
      expect(text).toContain(LETTER_REASONS['too-thick']);
      expect(text).toContain('Check with your post office.');
    }
});

test('a finding about post says where, as what, and instead of what', () => {
  const letter = { country: 'Germany', class: 'Großbrief', cheapest: 'Standardbrief' };
  const finding: CardFinding = {
    code: 'dearer-letter',
    severity: 'worth knowing',
    piece: CARD_BASE,
    place: null,
    amount: 0,
    reasons: ['too-thick'],
    letter,
    fix: [],
  };
  expect(cardFindingSentence(finding, sketch)).toBe(
    'Germany: it goes as “Großbrief”, not as “Standardbrief”: too thick. Check with your post office.',
  );
  expect(cardFindingSentence({ ...finding, code: 'no-letter', letter: { ...letter, class: null } }, sketch)).toBe(
    'Germany: the post takes no letter like it: too thick. Check with your post office.',
  );
});

test('how wide a piece is held is found nearly, and told up to the next 1/32 in or half a millimetre (by hand)', () => {
  const says = (amount: number, unit: 'in' | 'mm'): string =>
    cardFindingSentence(
      {
        code: 'held-too-little',
        severity: 'looks wrong',
        piece: 'strip',
        place: null,
        amount,
        reasons: [],
        fix: [],
      },
      { ...sketch, unit },
    );
  expect(says(1_010, 'in')).toContain('no wider than 1⁄16 in;');
  expect(says(0, 'in')).toContain('no wider than 1⁄32 in;');
  expect(says(961, 'mm')).toContain('no wider than 2 mm;');
});

test('an envelope that takes the card alone is too small for what reaches over its edge (by hand)', () => {
  /** What is said of a card of 4 1/4 x 5 1/2 in with a flag of 1 in that begins at `x`, in an envelope of that size. */
  const says = (x: number, width: number, height: number): string => {
    const flat = flatCard({ flag: { at: [x, 1, 1, 1] } });
    const envelope = { name: 'own', width: inches(width), height: inches(height) };
    const flagged = { ...flat, card: { ...flat.card, envelope } };
    const [found] = assembly(flagged).findings.filter(({ code }) => code === 'envelope-too-tight');
    if (!found) throw new Error('The envelope holds it.');
    return cardFindingSentence(found, flagged);
  };
  // It hangs over by 1/2 in: 4 3/4 in and the room of 1/8 in are asked for.
  const hangs = 'The envelope is smaller than the card with what reaches over its edge: it needs 1⁄2 in more.';
  expect(says(3.75, 4.375, 5.75)).toBe(hangs);
  expect(says(3.75, 5.75, 4.375)).toBe(hangs);
  expect(says(3, 4, 5.75)).toBe('The envelope is smaller than the card: it needs 3⁄8 in more.');
  // Too small for the card already, whatever hangs over.
  expect(says(3.75, 4, 5.75)).toBe('The envelope is smaller than the card: it needs 7⁄8 in more.');
});
