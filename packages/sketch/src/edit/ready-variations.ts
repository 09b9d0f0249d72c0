import { ticks } from '@trimwell/geometry';
import { type CardEdit, EDGES, type Sketch, type Variation } from '../model/sketch.js';
import { largerFocal } from './larger-focal.js';
import { otherCardSize } from './other-card-size.js';
import { withVariation } from './variations.js';

const SQUARE = { tl: ticks(0), tr: ticks(0), br: ticks(0), bl: ticks(0) } as const;

/** Every rounded corner made square. */
function squareCorners({ pieces }: Sketch): readonly CardEdit[] {
  return pieces
    .filter(({ shape, corners }) => shape === 'rectangle' && Object.values(corners).some((radius) => radius > 0))
    .map(({ id }) => ({ do: 'round', piece: id, corners: SQUARE }));
}

/** Every punched edge left plain. */
function plainEdges({ pieces }: Sketch): readonly CardEdit[] {
  return pieces.flatMap(({ id, punched }) =>
    EDGES.filter((edge) => punched[edge] !== undefined).map(
      (edge): CardEdit => ({ do: 'punch', piece: id, edge, punch: null }),
    ),
  );
}

/** Every raised piece glued flat. */
function gluedFlat({ pieces }: Sketch): readonly CardEdit[] {
  return pieces.filter(({ raise }) => raise > 0).map(({ id }) => ({ do: 'alter-piece', piece: id, raise: ticks(0) }));
}

type Ready = Omit<Variation, 'edits'> & { readonly edits: (sketch: Sketch, accepts: Accepts) => readonly CardEdit[] };

/** Says of a varied sketch whether it may be offered. */
export type Accepts = (varied: Sketch) => boolean;

const READY: readonly Ready[] = [
  { id: 'square-corners', name: 'Square corners', note: 'No corner rounder needed.', edits: squareCorners },
  { id: 'plain-edges', name: 'Plain edges', note: 'No border punch needed.', edits: plainEdges },
  { id: 'larger-focal-piece', name: 'Larger focal piece', note: 'For a larger image.', edits: largerFocal },
  { id: 'glued-flat', name: 'Glued flat', note: 'No foam needed; lighter and thinner in the post.', edits: gluedFlat },
  {
    id: 'another-card-size',
    name: 'Another card size',
    note: 'The pieces are fitted to it. It needs another envelope.',
    edits: otherCardSize,
  },
];

/** What is cut and glued, for telling whether two sketches are the same card. */
function made({ card, pieces }: Sketch): string {
  return JSON.stringify([card, pieces]);
}

/**
 * Variations that are ready for `sketch`: only those that change something, that `accepts` (the varied sketch), and that
 * no variation of the sketch does already. Lengths change by whole marks of the ruler; mats stay even.
 */
export function readyVariations(sketch: Sketch, accepts: Accepts = () => true): readonly Variation[] {
  const there = new Set([sketch, ...sketch.variations.map((each) => withVariation(sketch, each).sketch)].map(made));
  return READY.flatMap(({ edits: edit, ...ready }) => {
    const variation: Variation = { ...ready, edits: edit(sketch, accepts) };
    const varied = withVariation(sketch, variation).sketch;
    return there.has(made(varied)) || !accepts(varied) ? [] : [variation];
  });
}
