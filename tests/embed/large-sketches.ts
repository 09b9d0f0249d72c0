import type { SketchDocument } from '@trimwell/sketch';

type PieceDocument = NonNullable<SketchDocument['pieces']>[number];

interface Large {
  readonly name: string;
  readonly document: SketchDocument;
}

/** Sketches that are sound and as much work as a sound sketch can be: every one is read. */
export function largeSketches(small: SketchDocument): readonly Large[] {
  const [first] = small.pieces ?? [];
  if (!first) throw new Error('the small sketch has pieces');
  const { mats: _, ...piece } = first;
  const pieces = (count: number, of: (index: number) => Partial<PieceDocument>): readonly PieceDocument[] =>
    Array.from({ length: count }, (_, index) => ({ ...piece, id: `p${index}`, name: `Piece ${index}`, ...of(index) }));
  const { punches = [] } = small;
  const [punch] = punches;
  if (!punch) throw new Error('the small sketch has a punch');
  const finest = { ...punch, repeat: '1 mm', depth: '1 mm', bite: '1 mm' } as const;
  const all = { top: punch.id, right: punch.id, bottom: punch.id, left: punch.id };
  const bare = { ...small, variations: [], batch: { cards: 1 } } satisfies SketchDocument;
  const whole = { x: 0, y: 0, width: '2000 mm', height: '2000 mm' } as const;
  return [
    {
      name: '200 pieces, 24 of each on a card, 500 cards',
      document: { ...bare, pieces: [...pieces(200, () => ({ perCard: 24 }))], batch: { cards: 500 } },
    },
    {
      name: '200 pieces of 200 sizes, 500 cards',
      document: {
        ...bare,
        pieces: [...pieces(200, (n) => ({ width: `${20 + n} mm`, height: `${200 - n / 2} mm` }))],
        batch: { cards: 500 },
      },
    },
    {
      name: 'the finest punch on every edge of 200 sheets of 2 m',
      document: { ...bare, punches: [finest], pieces: [...pieces(200, () => ({ ...whole, punched: all }))] },
    },
    {
      name: 'the finest print on 200 sheets of 2 m',
      document: {
        ...bare,
        papers: small.papers.map((paper) => ({
          ...paper,
          look: { ...paper.look, pattern: 'lettering', repeat: '1 mm' },
        })),
        pieces: [...pieces(200, () => whole)],
      },
    },
    {
      name: 'a card of one tick',
      document: { ...bare, card: { ...small.card, width: '0.0016 mm', height: '0.0016 mm' }, pieces: [] },
    },
    {
      name: 'a card of 2 m and pieces of a tick',
      document: {
        ...bare,
        card: { ...small.card, width: '2000 mm', height: '2000 mm' },
        pieces: [...pieces(50, () => ({ width: '0.0016 mm', height: '0.0016 mm' }))],
      },
    },
    {
      name: 'a strip as wide as a hair and 2 m long',
      document: { ...bare, pieces: [...pieces(3, () => ({ width: '2000 mm', height: '0.0016 mm', tilt: 45 }))] },
    },
    {
      name: 'pieces far off the card',
      document: { ...bare, pieces: [...pieces(20, (n) => ({ x: n % 2 ? '-2000 mm' : '2000 mm', y: '-2000 mm' }))] },
    },
    {
      name: '40 variations of 300 edits each',
      document: {
        ...bare,
        variations: Array.from({ length: 40 }, (_, n) => ({
          id: `v${n}`,
          name: `Variation ${n}`,
          edits: Array.from({ length: 300 }, () => ({ do: 'tilt' as const, piece: first.id, tilt: n })),
        })),
      },
    },
    {
      name: '60 papers in 24 mixes of 24',
      document: {
        ...bare,
        papers: [
          ...small.papers,
          ...Array.from({ length: 56 }, (_, n) => ({
            ...(small.papers[0] as SketchDocument['papers'][number]),
            id: `q${n}`,
            name: `Paper ${n}`,
            sheets: 999,
          })),
        ],
        mixes: [
          ...(small.mixes ?? []),
          ...Array.from({ length: 23 }, (_, n) => ({
            id: `m${n}`,
            name: `Mix ${n}`,
            papers: Array.from({ length: 24 }, (_, k) => `q${(n + k) % 56}`),
          })),
        ],
        pieces: [...(small.pieces ?? []), ...pieces(100, (n) => ({ from: `m${n % 23}` }))],
        batch: { cards: 500 },
      },
    },
    {
      name: 'as many as possible of a tiny piece',
      document: {
        ...bare,
        papers: small.papers.map((paper) => ({ ...paper, width: '2000 mm', height: '2000 mm', sheets: 999 })),
        card: { ...small.card, width: '10 mm', height: '10 mm' },
        pieces: [...pieces(1, () => ({ width: '1 mm', height: '1 mm' }))],
        batch: { cards: 'as many as possible' },
      },
    },
    {
      name: 'a name of every length on 200 pieces',
      document: { ...bare, pieces: [...pieces(200, (n) => ({ name: 'W'.repeat(1 + (n % 80)) }))] },
    },
  ];
}
