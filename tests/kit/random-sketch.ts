import { expectSketch, type Sketch, type SketchDocument } from '@trimwell/sketch';
import fc from 'fast-check';

type PieceDocument = NonNullable<SketchDocument['pieces']>[number];
type PaperDocument = SketchDocument['papers'][number];

const KINDS = ['panel', 'mat', 'strip', 'focal piece', 'sentiment', 'tag', 'other'] as const;
const PATTERNS = ['plain', 'dot', 'gingham', 'sprig', 'lettering'] as const;
/** Names as people give them: short, in words, with accents, very long, and long without a space to break at. */
const NAMES = [
  'A',
  'Panel',
  'Größe für Zoë & Łukasz',
  'The very long strip of hedgerow paper that runs below the second wreath, torn',
  'Donaudampfschifffahrtsgesellschaftskapitänsmützenbandschleifenunterlegpapierstreifen'.slice(0, 80),
  'MMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMM',
] as const;

const name = fc.constantFrom(...NAMES);
/** Sides in marks of 1/16 in, or whole millimetres: tiny strips, usual pieces, and now and then one larger than a page. */
const side = fc.oneof(
  { weight: 3, arbitrary: fc.integer({ min: 2, max: 8 }) },
  { weight: 6, arbitrary: fc.integer({ min: 9, max: 80 }) },
  { weight: 1, arbitrary: fc.integer({ min: 81, max: 190 }) },
);

interface PieceWish {
  readonly name: string;
  readonly kind: (typeof KINDS)[number];
  readonly inside: boolean;
  readonly shape: 'rectangle' | 'ellipse' | 'banner' | 'tag';
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly tilt: number;
  readonly radius: number;
  readonly punch: boolean;
  readonly from: number;
  readonly raise: number;
  readonly perCard: number;
}

const piece: fc.Arbitrary<PieceWish> = fc.record({
  name,
  kind: fc.constantFrom(...KINDS),
  inside: fc.boolean(),
  shape: fc.constantFrom('rectangle', 'rectangle', 'rectangle', 'ellipse', 'banner', 'tag'),
  x: fc.integer({ min: -8, max: 60 }),
  y: fc.integer({ min: -8, max: 80 }),
  width: side,
  height: side,
  tilt: fc.constantFrom(0, 0, 0, -12, 45, 180),
  radius: fc.constantFrom(0, 0, 2, 4),
  punch: fc.boolean(),
  from: fc.nat({ max: 5 }),
  raise: fc.constantFrom(0, 0, 1),
  perCard: fc.constantFrom(1, 1, 1, 2, 5),
});

const paper = fc.record({
  name,
  pattern: fc.constantFrom(...PATTERNS),
  large: fc.boolean(),
  sheets: fc.option(fc.integer({ min: 1, max: 4 }), { nil: undefined, freq: 2 }),
  directional: fc.boolean(),
  margin: fc.constantFrom(0, 0, 4),
});

const words = fc.record({
  title: name,
  number: fc.option(fc.constantFrom('sketch 7', 'a number of just 24 let.'), { nil: undefined }),
  credit: fc.option(name, { nil: undefined }),
  notes: fc.option(fc.constantFrom('Short.', `${'Glue it down well, then leave it. '.repeat(40)}\n${NAMES[4]}`), {
    nil: undefined,
  }),
  supplies: fc.array(name, { maxLength: 6 }),
  links: fc.array(fc.constantFrom('https://example.org/', `https://example.org/${'long-path/'.repeat(30)}`), {
    maxLength: 3,
  }),
});

interface SketchWish {
  readonly metric: boolean;
  readonly words: { readonly title: string } & Record<string, unknown>;
  readonly fold: 'left' | 'top' | 'none';
  readonly width: number;
  readonly height: number;
  readonly papers: readonly {
    readonly name: string;
    readonly pattern: (typeof PATTERNS)[number];
    readonly large: boolean;
    readonly sheets: number | undefined;
    readonly directional: boolean;
    readonly margin: number;
  }[];
  readonly mixed: boolean;
  readonly pieces: readonly PieceWish[];
  readonly cards: number;
  readonly hiddenCentres: boolean;
  readonly stoppedCuts: boolean;
}

function withoutUndefined<T extends object>(record: T): T {
  return Object.fromEntries(Object.entries(record).filter(([, value]) => value !== undefined)) as T;
}

function documentOf(wish: SketchWish): SketchDocument {
  const { metric } = wish;
  // One mark is 1/16 in, or a millimetre and a half: both rulers are met, and sizes stay those of cards.
  const length = (marks: number): string => (metric ? `${marks * 1.5} mm` : `${marks}/16 in`);
  const papers = wish.papers.map(
    ({ name: called, pattern, large, margin, ...rest }, index): PaperDocument =>
      withoutUndefined({
        ...rest,
        id: `paper-${index}`,
        name: called,
        kind: 'cardstock' as const,
        width: metric ? (large ? '305 mm' : '210 mm') : large ? '12 in' : '8 1/2 in',
        height: metric ? (large ? '305 mm' : '297 mm') : large ? '12 in' : '11 in',
        margins: { top: length(margin), right: length(margin), bottom: length(margin), left: length(margin) },
        look: { pattern, ground: '#2f5d50', inks: ['#f0e2d2'], repeat: length(8) },
      }),
  );
  const sources = [...papers.map(({ id }) => id), ...(wish.mixed && papers.length > 1 ? ['mix-0'] : [])];
  const pieces = wish.pieces.map(
    ({ inside, radius, punch, from, ...each }, index): PieceDocument => ({
      id: `piece-${index}`,
      name: each.name,
      kind: each.kind,
      face: inside && index % 4 === 3 ? 'inside' : 'front',
      shape: each.shape,
      x: length(each.x),
      y: length(each.y),
      width: length(each.width),
      height: length(each.height),
      tilt: each.tilt,
      corners: each.shape === 'rectangle' ? { tl: length(radius), br: length(radius) } : {},
      punched: punch && each.shape === 'rectangle' ? { bottom: 'waves' } : {},
      from: sources[from % sources.length] ?? 'paper-0',
      raise: length(each.raise),
      perCard: each.perCard,
    }),
  );
  const { links, ...said } = wish.words as SketchWish['words'] & { readonly links: readonly string[] };
  return {
    trimwell: 1,
    id: 'random',
    ...withoutUndefined(said),
    links: links.map((address) => ({ text: 'How it was made', address })),
    unit: metric ? 'mm' : 'in',
    card: { width: length(wish.width), height: length(wish.height), fold: wish.fold, base: 'paper-0' },
    papers,
    mixes: sources.includes('mix-0') ? [{ id: 'mix-0', name: 'Prints', papers: papers.map(({ id }) => id) }] : [],
    punches: [
      { id: 'waves', name: 'Long waves', profile: 'wave', repeat: length(16), depth: length(2), bite: length(1) },
    ],
    pieces,
    batch: { cards: wish.cards, hiddenCentres: wish.hiddenCentres, stoppedCuts: wish.stoppedCuts },
    variations: wish.pieces.slice(0, 3).map((each, index) => ({
      id: `variation-${index}`,
      name: each.name,
      note: index === 0 ? '' : 'A little larger, and without the tag. '.repeat(index * 4).trim(),
      edits: [
        { do: 'round', piece: `piece-${index}`, corners: {} },
        { do: 'resize', piece: `piece-${index}`, x: length(0), y: length(0), width: length(20), height: length(31) },
      ],
    })),
  };
}

/**
 * Sketches with `most` pieces at most, on both faces, in inches and in millimetres: tiny strips, extreme proportions,
 * pieces off the card and larger than their sheets, long names, limits, margins, mixes, punches, variations, notes.
 */
export function randomSketch(most = 40): fc.Arbitrary<Sketch> {
  return fc
    .record({
      metric: fc.boolean(),
      words,
      fold: fc.constantFrom('left', 'top', 'none'),
      width: fc.integer({ min: 32, max: 96 }),
      height: fc.integer({ min: 32, max: 110 }),
      papers: fc.array(paper, { minLength: 1, maxLength: 5 }),
      mixed: fc.boolean(),
      pieces: fc.oneof(
        { weight: 2, arbitrary: fc.array(piece, { minLength: 1, maxLength: Math.min(most, 10), size: 'max' }) },
        { weight: 1, arbitrary: fc.array(piece, { minLength: 1, maxLength: most, size: 'max' }) },
      ),
      cards: fc.integer({ min: 1, max: 4 }),
      hiddenCentres: fc.boolean(),
      stoppedCuts: fc.boolean(),
    })
    .map((wish) => expectSketch(documentOf(wish as SketchWish)));
}
