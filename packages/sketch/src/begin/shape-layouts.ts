import { type Layout, motif, words } from './layout.js';
import { type Box, columns, evenShare, inset, lies, middle, rows, split, square } from './layout-room.js';

/** A banner that comes in from the fold, under a picture. */
export const BANNER_ON_PANEL: Layout = {
  id: 'banner-on-panel',
  name: 'Banner on a panel',
  about: 'A banner from the edge of the card across a print, a matted picture beside it.',
  base: 'oat',
  papers: ['bracken', 'cream', 'lane-stripe', 'fern'],
  supplies: ['Liquid adhesive', 'Foam pads', 'Ink, bracken brown'],
  pieces: ({ face, reveal, least }) => {
    const panel = inset(face, 2 * reveal);
    const [first, second] = split(panel, lies(panel) ? 0.58 : 0.68);
    const [beside, picture] = lies(panel) ? [first, second] : [second, first];
    const height = evenShare(beside.height, lies(panel) ? 0.28 : 0.56, least);
    const banner: Box = {
      x: 0,
      y: beside.y + Math.floor((beside.height - height) / 2),
      width: Math.round((lies(panel) ? beside.x + beside.width : face.width) * (lies(panel) ? 0.94 : 0.84)),
      height,
    };
    return [
      { id: 'panel', name: 'Panel', kind: 'panel', box: panel, from: 'lane-stripe', mats: [{ from: 'fern', reveal }] },
      {
        id: 'picture',
        name: 'Picture',
        kind: 'focal piece',
        box: middle(picture, { across: 0.6, down: 0.66 }, least),
        from: 'cream',
        art: motif('heart', '#a9622f'),
        mats: [{ from: 'bracken', reveal }],
      },
      {
        id: 'banner',
        name: 'Banner',
        kind: 'banner',
        shape: 'banner',
        box: banner,
        from: 'bracken',
        art: words('for you', '#fffaf0'),
      },
    ];
  },
};

/** A round picture on a square print. */
export const CIRCLE_ON_SQUARE: Layout = {
  id: 'circle-on-square',
  name: 'Circle on a square',
  about: 'A matted circle on a matted square, words below.',
  base: 'chalk',
  papers: ['dog-rose', 'damson', 'rose-hedge', 'cream'],
  supplies: ['Liquid adhesive', 'Foam pads', 'Circle cutter', 'Ink, damson'],
  pieces: ({ face, reveal, least }) => {
    const room = inset(face, 2 * reveal);
    const [upper, lower] = split(room, lies(room) ? 0.58 : 0.76);
    const patch = square(upper, 0.86, least);
    const greeting = middle(lower, lies(room) ? { across: 0.8, down: 0.2 } : { across: 0.68, down: 0.5 }, least);
    return [
      { id: 'panel', name: 'Panel', kind: 'panel', box: room, from: 'dog-rose' },
      {
        id: 'square',
        name: 'Square',
        kind: 'panel',
        box: patch,
        from: 'rose-hedge',
        mats: [{ from: 'damson', reveal: 1 }],
      },
      {
        id: 'circle',
        name: 'Circle',
        kind: 'focal piece',
        shape: 'ellipse',
        box: square(patch, 0.6, least),
        from: 'cream',
        art: motif('heart', '#5b3350'),
        mats: [{ from: 'damson', reveal }],
      },
      {
        id: 'greeting',
        name: 'Greeting',
        kind: 'sentiment',
        box: greeting,
        from: 'cream',
        art: words('be mine', '#5b3350'),
      },
    ];
  },
};

/** Tags in a row, hung from a strip. */
export const ROW_OF_TAGS: Layout = {
  id: 'row-of-tags',
  name: 'Row of tags',
  about: 'Tags of different prints hung from a strip, words below.',
  base: 'oat',
  papers: ['chalk', 'fern', 'fronds', 'honey-check', 'elder-beads', 'cream'],
  mix: ['fronds', 'honey-check', 'elder-beads'],
  supplies: ['Liquid adhesive', 'Thin cord', 'Ink, fern green'],
  pieces: ({ face, reveal, gap, least }) => {
    const panel = inset(face, 2 * reveal);
    const [upper, lower] = rows({ ...panel, height: panel.height - (panel.height % 2) }, 2, 2);
    const hung = inset({ ...(upper ?? panel), height: Math.round(panel.height * 0.66) }, 2 * gap);
    const most = Math.floor((hung.width + 2 * gap) / (least + 2 * gap));
    const count = Math.max(1, Math.min(most, face.width > face.height * 1.6 ? 5 : 3));
    const strip = { ...panel, y: hung.y + gap, height: least };
    const rest = panel.y + panel.height - hung.y - hung.height;
    const below = { ...(lower ?? panel), y: hung.y + hung.height, height: rest };
    const tags = columns(hung, count, 2 * gap);
    return [
      { id: 'panel', name: 'Panel', kind: 'panel', box: panel, from: 'chalk', mats: [{ from: 'fern', reveal }] },
      { id: 'strip', name: 'Strip', kind: 'strip', box: strip, from: 'fern' },
      ...tags.map((box, index) => ({
        id: `tag-${index + 1}`,
        name: `Tag ${index + 1}`,
        kind: 'tag' as const,
        shape: 'tag' as const,
        box,
        from: 'prints' as const,
      })),
      {
        id: 'greeting',
        name: 'Greeting',
        kind: 'sentiment',
        box: middle(below, { across: lies(panel) ? 0.4 : 0.64, down: 0.56 }, least),
        from: 'cream',
        art: words('hooray', '#4f6f52'),
        mats: [{ from: 'fern', reveal: 1 }],
      },
    ];
  },
};

/** Four blocks of four prints, none twice on one card. */
export const QUILT_OF_FOUR: Layout = {
  id: 'quilt-of-four',
  name: 'Quilt of four',
  about: 'Four blocks from prints that take turns, a label where they meet.',
  base: 'chalk',
  papers: ['millpond', 'cream', 'pond-dots', 'rain-stripe', 'lantern-stars', 'honey-check', 'honey'],
  mix: ['pond-dots', 'rain-stripe', 'lantern-stars', 'honey-check'],
  contrast: ['block-1', 'block-2', 'block-3', 'block-4'],
  supplies: ['Liquid adhesive', 'Ink, millpond blue'],
  pieces: ({ face, reveal, gap, least }) => {
    const panel = inset(face, 2 * reveal);
    const blocks = rows(inset(panel, gap), 2, gap).flatMap((row) => columns(row, 2, gap));
    const label = middle(panel, lies(panel) ? { across: 0.4, down: 0.3 } : { across: 0.56, down: 0.18 }, least);
    return [
      { id: 'panel', name: 'Panel', kind: 'panel', box: panel, from: 'cream', mats: [{ from: 'millpond', reveal }] },
      ...blocks.map((box, index) => ({
        id: `block-${index + 1}`,
        name: `Block ${index + 1}`,
        kind: 'panel' as const,
        box,
        from: 'prints' as const,
      })),
      {
        id: 'label',
        name: 'Label',
        kind: 'sentiment',
        box: label,
        from: 'cream',
        art: words('so glad', '#2f5d66'),
        mats: [
          { from: 'honey', reveal: 1 },
          { from: 'millpond', reveal },
        ],
      },
    ];
  },
};

/** Small pictures in a row along the card. */
export const ROW_OF_WINDOWS: Layout = {
  id: 'row-of-windows',
  name: 'Row of windows',
  about: 'Small matted pictures along the card, words at its end; made for slimline cards.',
  base: 'chalk',
  papers: ['slate', 'cream', 'lantern-stars', 'honey'],
  supplies: ['Liquid adhesive', 'Ink, honey yellow'],
  pieces: ({ face, reveal, gap, least }) => {
    const panel = inset(face, 2 * reveal);
    const [along, end] = split(panel, lies(panel) ? 0.74 : 0.78);
    const level = lies(panel);
    const [length, across] = level ? [along.width, along.height] : [along.height, along.width];
    const row = inset(along, 2 * gap);
    const most = Math.floor(((level ? row.width : row.height) + 2 * gap) / (least + 2 * gap));
    // A card too small for three has one.
    const count = most < 3 ? 1 : Math.min(most, length > across * 1.9 ? 4 : 3);
    const cells = level ? columns(row, count, 2 * gap) : rows(row, count, 2 * gap);
    // Never longer than one and a half times the other side, so that it stays a window and is no strip.
    const window = (cell: Box): Box =>
      middle(
        cell,
        {
          across: Math.min(1, (1.5 * cell.height) / cell.width),
          down: Math.min(1, (1.5 * cell.width) / cell.height),
        },
        least,
      );
    const pictures = ['sun', 'star', 'heart', 'wreath'] as const;
    return [
      {
        id: 'panel',
        name: 'Panel',
        kind: 'panel',
        box: panel,
        from: 'lantern-stars',
        mats: [{ from: 'slate', reveal }],
      },
      ...cells.map((cell, index) => ({
        id: `window-${index + 1}`,
        name: `Window ${index + 1}`,
        kind: 'focal piece' as const,
        box: window(cell),
        from: 'cream' as const,
        art: motif(pictures[index] ?? 'sun', '#46555c'),
        mats: [{ from: 'honey' as const, reveal: 1 }],
      })),
      {
        id: 'greeting',
        name: 'Greeting',
        kind: 'sentiment',
        box: middle(end, level ? { across: 0.82, down: 0.24 } : { across: 0.76, down: 0.46 }, least),
        from: 'cream',
        art: words('good night', '#46555c'),
        mats: [{ from: 'honey', reveal: 1 }],
      },
    ];
  },
};

/** A quiet front, and the words inside. */
export const WORDS_INSIDE: Layout = {
  id: 'words-inside',
  name: 'Words inside',
  about: 'A quiet front with a strip beside a picture, a liner with the words inside.',
  base: 'oat',
  papers: ['damson', 'cream', 'hill-post', 'dog-rose'],
  supplies: ['Liquid adhesive', 'Ink, damson', 'Pen for the inside'],
  pieces: ({ face, reveal, gap, least, opens }) => {
    const panel = inset(face, 2 * reveal);
    const width = Math.max(least, Math.round(panel.width * 0.26));
    const side = { ...panel, x: panel.x + gap, width };
    const right = { ...panel, x: side.x + width, width: panel.x + panel.width - side.x - width };
    const liner = inset(face, 2 * reveal);
    const [upper, lower] = rows({ ...liner, height: liner.height - (liner.height % 2) }, 2, 2);
    const front = [
      { id: 'panel', name: 'Panel', kind: 'panel', box: panel, from: 'hill-post', mats: [{ from: 'damson', reveal }] },
      { id: 'side', name: 'Side strip', kind: 'strip', box: side, from: 'dog-rose' },
      {
        id: 'picture',
        name: 'Picture',
        kind: 'focal piece',
        box: middle(right, { across: 0.62, down: lies(panel) ? 0.66 : 0.44 }, least),
        from: 'cream',
        art: motif('heart', '#5b3350'),
        mats: [{ from: 'damson', reveal }],
      },
    ] as const;
    if (!opens) return front;
    return [
      ...front,
      {
        id: 'liner',
        name: 'Liner',
        kind: 'liner',
        face: 'inside',
        box: liner,
        from: 'cream',
        mats: [{ from: 'dog-rose', reveal }],
      },
      {
        id: 'inside-words',
        name: 'Words inside',
        kind: 'sentiment',
        face: 'inside',
        box: middle(upper ?? liner, { across: 0.72, down: 0.4 }, least),
        from: 'cream',
        art: words('you are dear to me', '#5b3350'),
        mats: [{ from: 'damson', reveal: 1 }],
      },
      {
        id: 'inside-strip',
        name: 'Strip inside',
        kind: 'strip',
        face: 'inside',
        box: middle(lower ?? liner, { across: 1, down: 0.24 }, least),
        from: 'hill-post',
      },
    ];
  },
};
