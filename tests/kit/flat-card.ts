import { expectSketch, type Piece, type Sketch } from '@trimwell/sketch';

/** A piece of a flat card: where it lies and how large it is, in inches, and what else sets it apart. */
export interface FlatPiece extends Partial<Pick<Piece, 'shape' | 'tilt' | 'punched' | 'art'>> {
  readonly at: readonly [x: number, y: number, width: number, height: number];
  /** Foam under it, in inches. */
  readonly foam?: number;
  /** Radius of its corners, in inches. */
  readonly radius?: number;
}

/**
 * A card of 4 1/4 x 5 1/2 in with a background of 4 x 5 1/4 in and rectangles of one paper of 0.3 mm over it, by name in gluing
 * order. At hand is a punch `scallop`, 3/16 in deep.
 */
export function flatCard(pieces: Readonly<Record<string, FlatPiece>>): Sketch {
  const said = (length: number): string => `${length} in`;
  const laid: Readonly<Record<string, FlatPiece>> = { background: { at: [1 / 8, 1 / 8, 4, 5.25] }, ...pieces };
  return expectSketch({
    trimwell: 1,
    id: 'flat',
    title: 'Flat',
    unit: 'in',
    card: { width: '4 1/4 in', height: '5 1/2 in', fold: 'left', base: 'moss' },
    papers: [
      {
        id: 'moss',
        name: 'Moss',
        kind: 'cardstock',
        width: '12 in',
        height: '12 in',
        caliper: '0.3 mm',
        gsm: 250,
        look: { pattern: 'plain', ground: '#f5f0e6', inks: ['#f0e2d2'], repeat: '1/2 in' },
      },
    ],
    punches: [{ id: 'scallop', name: 'Scallop', profile: 'scallop', repeat: '1/2 in', depth: '3/16 in' }],
    pieces: Object.entries(laid).map(
      ([
        id,
        {
          at: [x, y, width, height],
          foam = 0,
          radius = 0,
          ...more
        },
      ]) => ({
        id,
        name: id,
        kind: 'panel',
        face: 'front',
        shape: 'rectangle',
        x: said(x),
        y: said(y),
        width: said(width),
        height: said(height),
        corners: { tl: said(radius), tr: said(radius), br: said(radius), bl: said(radius) },
        from: 'moss',
        raise: said(foam),
        ...more,
      }),
    ),
    batch: { cards: 4 },
  });
}
