import { type Layout, motif, words } from './layout.js';
import type { LayoutMat } from './layout-piece.js';
import { columns, inset, lies, middle, rows, split, square } from './layout-room.js';

/** A print framed by its mat, a picture in its middle and a few words. */
export const WINDOW_AND_MAT: Layout = {
  id: 'window-and-mat',
  name: 'Window and mat',
  about: 'A matted print, a matted picture on it, words beside it.',
  base: 'oat',
  papers: ['fern', 'fronds', 'cream', 'bracken'],
  supplies: ['Liquid adhesive', 'Stamp of a wreath', 'Ink, fern green'],
  pieces: ({ face, reveal, least }) => {
    const panel = inset(face, 2 * reveal);
    const [picture, below] = split(panel, lies(panel) ? 0.54 : 0.72);
    const window = middle(picture, lies(panel) ? { across: 0.62, down: 0.72 } : { across: 0.66, down: 0.68 }, least);
    const greeting = middle(below, lies(panel) ? { across: 0.78, down: 0.2 } : { across: 0.62, down: 0.5 }, least);
    return [
      {
        id: 'panel',
        name: 'Panel',
        kind: 'panel',
        box: panel,
        from: 'fronds',
        mats: [{ from: 'fern', reveal }],
      },
      {
        id: 'window',
        name: 'Window',
        kind: 'focal piece',
        box: window,
        from: 'cream',
        art: motif('wreath', '#4f6f52'),
        mats: [{ from: 'fern', reveal }],
      },
      {
        id: 'greeting',
        name: 'Greeting',
        kind: 'sentiment',
        box: greeting,
        from: 'cream',
        art: words('with love', '#a9622f'),
        mats: [{ from: 'bracken', reveal: 1 }],
      },
    ];
  },
};

/** Three columns of different prints and a band of words across them. */
export const THREE_STRIPS: Layout = {
  id: 'three-strips',
  name: 'Three strips',
  about: 'Three strips of different prints side by side, words on a band across them.',
  base: 'chalk',
  papers: ['poppy', 'cream', 'picnic', 'elder-beads', 'rose-hedge'],
  supplies: ['Liquid adhesive', 'Ink, poppy red'],
  pieces: ({ face, reveal, gap, least }) => {
    const panel = inset(face, 2 * reveal);
    const strips = columns(inset(panel, gap), 3, gap);
    const [, lower] = rows({ ...panel, height: panel.height - (panel.height % 2) }, 2, gap);
    const band = middle(lower ?? panel, { across: 1, down: 0.34 }, least);
    const prints = ['picnic', 'elder-beads', 'rose-hedge'] as const;
    return [
      { id: 'panel', name: 'Panel', kind: 'panel', box: panel, from: 'cream', mats: [{ from: 'poppy', reveal }] },
      ...strips.map((box, index) => ({
        id: `strip-${index + 1}`,
        name: `Strip ${index + 1}`,
        kind: 'strip' as const,
        box,
        from: prints[index] ?? 'picnic',
      })),
      { id: 'band', name: 'Band', kind: 'strip', box: band, from: 'poppy' },
      {
        id: 'greeting',
        name: 'Greeting',
        kind: 'sentiment',
        box: inset(band, 1),
        from: 'cream',
        art: words('happy day', '#b6483a'),
      },
    ];
  },
};

/** Words in two frames on a band, in the exact middle of a print. */
export const FRAMED_WORDS: Layout = {
  id: 'framed-words',
  name: 'Framed words',
  about: 'Words in two frames, on a band across the middle of a print.',
  base: 'chalk',
  papers: ['slate', 'honey', 'cream', 'honey-check'],
  supplies: ['Liquid adhesive', 'Ink, slate grey'],
  pieces: ({ face, reveal, least }) => {
    const panel = inset(face, 2 * reveal);
    const label = middle(panel, { across: 0.64, down: lies(panel) ? 0.34 : 0.24 }, least);
    const outer = label.height + 4 * reveal;
    const band = middle(panel, { across: 1, down: (outer * 0.5) / panel.height }, least);
    return [
      { id: 'panel', name: 'Panel', kind: 'panel', box: panel, from: 'honey-check', mats: [{ from: 'slate', reveal }] },
      { id: 'band', name: 'Band', kind: 'strip', box: band, from: 'slate' },
      {
        id: 'label',
        name: 'Label',
        kind: 'sentiment',
        box: label,
        from: 'cream',
        art: words('thank you', '#46555c'),
        mats: [
          { from: 'honey', reveal: 1 },
          { from: 'slate', reveal },
        ],
      },
    ];
  },
};

/** A print with a picture that leans, and words that stand straight. */
export const LEANING_PANEL: Layout = {
  id: 'leaning-panel',
  name: 'Leaning panel',
  about: 'A matted picture that leans a little on a print, words straight below it.',
  base: 'oat',
  papers: ['heather', 'cream', 'moor-plaid', 'honey'],
  supplies: ['Liquid adhesive', 'Foam pads', 'Ink, heather'],
  pieces: ({ face, reveal, least }) => {
    const panel = inset(face, 2 * reveal);
    const [upper, lower] = split(panel, lies(panel) ? 0.56 : 0.74);
    const leaning = middle(upper, lies(panel) ? { across: 0.6, down: 0.6 } : { across: 0.58, down: 0.6 }, least);
    const greeting = middle(lower, lies(panel) ? { across: 0.84, down: 0.2 } : { across: 0.76, down: 0.46 }, least);
    return [
      {
        id: 'panel',
        name: 'Panel',
        kind: 'panel',
        box: panel,
        from: 'moor-plaid',
        mats: [{ from: 'heather', reveal }],
      },
      {
        id: 'picture',
        name: 'Picture',
        kind: 'focal piece',
        box: leaning,
        from: 'cream',
        tilt: -6,
        art: motif('branch', '#75628c'),
        mats: [{ from: 'heather', reveal }],
      },
      {
        id: 'greeting',
        name: 'Greeting',
        kind: 'sentiment',
        box: greeting,
        from: 'cream',
        art: words('thinking of you', '#75628c'),
        mats: [{ from: 'honey', reveal: 1 }],
      },
    ];
  },
};

/** Mats from dark to light, the last the widest; as many as there is room for, both sides together, but at least one. */
function steps(reveal: number, room: number): readonly LayoutMat[] {
  const all: readonly LayoutMat[] = [
    { from: 'millpond', reveal },
    { from: 'rain', reveal },
    { from: 'pond-dots', reveal: 2 * reveal },
  ];
  const widths = all.map((_, count) => all.slice(0, count + 1).reduce((sum, mat) => sum + 2 * mat.reveal, 0));
  return all.slice(0, Math.max(1, widths.filter((width) => width <= room).length));
}

/** A picture in mats that grow from dark to light. */
export const STEPPED_MATS: Layout = {
  id: 'stepped-mats',
  name: 'Stepped mats',
  about: 'A picture in three mats, each a shade further, words below.',
  base: 'chalk',
  papers: ['millpond', 'rain', 'pond-dots', 'cream'],
  supplies: ['Liquid adhesive', 'Ink, millpond blue'],
  pieces: ({ face, reveal, least }) => {
    const room = inset(face, 2 * reveal);
    const [upper, lower] = split(room, lies(room) ? 0.62 : 0.78);
    const short = Math.min(upper.width, upper.height);
    const mats = steps(reveal, Math.floor(short * 0.94) - least);
    const shown = mats.reduce((sum, mat) => sum + 2 * mat.reveal, 0);
    const picture = square(upper, 0.94 - shown / short, least);
    const greeting = middle(lower, lies(room) ? { across: 0.8, down: 0.2 } : { across: 0.7, down: 0.5 }, least);
    return [
      { id: 'panel', name: 'Panel', kind: 'panel', box: room, from: 'cream', mats: [{ from: 'millpond', reveal }] },
      {
        id: 'picture',
        name: 'Picture',
        kind: 'focal piece',
        box: picture,
        from: 'cream',
        art: motif('sun', '#2f5d66'),
        mats,
      },
      {
        id: 'greeting',
        name: 'Greeting',
        kind: 'sentiment',
        box: greeting,
        from: 'millpond',
        art: words('hello sunshine', '#fffaf0'),
      },
    ];
  },
};
