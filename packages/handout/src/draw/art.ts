import { ellipse, type Outline, type Point, polygon } from '@trimwell/geometry';
import type { Piece } from '@trimwell/sketch';
import type { Item } from '../drawing/drawing.js';
import { textWidth } from './text-width.js';

type Art = NonNullable<Piece['art']>;

/** A leaf from `at`, `length` long, pointing `angle` radians clockwise from the right. */
function leaf(at: Point, length: number, angle: number): Outline {
  const point = (along: number, aside: number): Point => ({
    x: at.x + along * Math.cos(angle) - aside * Math.sin(angle),
    y: at.y + along * Math.sin(angle) + aside * Math.cos(angle),
  });
  const side = (aside: number): readonly [Point, Point] => [
    point(length * 0.35, aside),
    point(length * 0.75, aside * 0.8),
  ];
  const [a, b] = side(length * 0.32);
  const [c, d] = side(-length * 0.32);
  return {
    start: at,
    steps: [
      { kind: 'curve', control1: a, control2: b, to: point(length, 0) },
      { kind: 'curve', control1: d, control2: c, to: at },
    ],
  };
}

/** An open line through `points`, curving gently. */
function stem(from: Point, control1: Point, control2: Point, to: Point): Outline {
  return { start: from, steps: [{ kind: 'curve', control1, control2, to }] };
}

function star(centre: Point, radius: number): Outline {
  const points = Array.from({ length: 10 }, (_, index): Point => {
    const angle = (index * Math.PI) / 5 - Math.PI / 2;
    const reach = index % 2 === 0 ? radius : radius * 0.42;
    return { x: centre.x + reach * Math.cos(angle), y: centre.y + reach * Math.sin(angle) };
  });
  return polygon(points);
}

function heart({ x, y }: Point, radius: number): Outline {
  const at = (dx: number, dy: number): Point => ({ x: x + dx * radius, y: y + dy * radius });
  return {
    start: at(0, -0.45),
    steps: [
      { kind: 'curve', control1: at(0.35, -1.1), control2: at(1.25, -0.75), to: at(0.95, 0) },
      { kind: 'curve', control1: at(0.75, 0.45), control2: at(0.3, 0.65), to: at(0, 0.95) },
      { kind: 'curve', control1: at(-0.3, 0.65), control2: at(-0.75, 0.45), to: at(-0.95, 0) },
      { kind: 'curve', control1: at(-1.25, -0.75), control2: at(-0.35, -1.1), to: at(0, -0.45) },
    ],
  };
}

function wreath(centre: Point, radius: number): readonly Outline[] {
  const count = 15;
  const leaves = Array.from({ length: count }, (_, index) => {
    const angle = (index * 2 * Math.PI) / count;
    const at = { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) };
    return leaf(at, radius * 0.42, angle + (index % 2 === 0 ? 0.85 : 2.3));
  });
  return [ellipse(centre.x - radius, centre.y - radius, 2 * radius, 2 * radius), ...leaves];
}

function branch(centre: Point, radius: number): readonly Outline[] {
  const at = (t: number): Point => ({ x: centre.x + (t - 0.5) * 0.5 * radius, y: centre.y + (0.5 - t) * 2 * radius });
  const leaves = [0.25, 0.45, 0.65, 0.85].flatMap((t) => [
    leaf(at(t), radius * 0.55, -0.35),
    leaf(at(t - 0.08), radius * 0.55, -2.3),
  ]);
  return [stem(at(0), at(0.3), at(0.7), at(1)), ...leaves];
}

function sun(centre: Point, radius: number): readonly Outline[] {
  const rays = Array.from({ length: 16 }, (_, index) => {
    const angle = (index * Math.PI) / 8;
    const reach = (share: number): Point => ({
      x: centre.x + share * radius * Math.cos(angle),
      y: centre.y + share * radius * Math.sin(angle),
    });
    return polygon([reach(0.68), reach(index % 2 === 0 ? 1 : 0.85)]);
  });
  const size = radius * 1.1;
  return [ellipse(centre.x - size / 2, centre.y - size / 2, size, size), ...rays];
}

function outlines(motif: Art['motif'], centre: Point, radius: number): readonly Outline[] {
  switch (motif) {
    case 'wreath':
      return wreath(centre, radius * 0.72);
    case 'branch':
      return branch(centre, radius * 0.9);
    case 'heart':
      return [heart(centre, radius * 0.8)];
    case 'star':
      return [star(centre, radius * 0.95)];
    case 'sun':
      return sun(centre, radius * 0.95);
    case 'words':
      return [];
  }
}

/** Where words have room in the middle of a piece: beside a banner's tail, inside an ellipse, short of the edges. */
function roomForWords({ shape, width, height }: Piece): { readonly middle: number; readonly width: number } {
  const tail = shape === 'banner' && width >= height ? Math.min(height / 2, width / 3) : 0;
  const share = shape === 'ellipse' ? 0.76 : 0.92;
  return { middle: (width - tail) / 2, width: (width - tail) * share };
}

/** The printed or stamped picture on a piece, in the middle of it, in the piece's own coordinates. */
export function drawArt(piece: Piece, art: Art, key: string): readonly Item[] {
  const centre: Point = { x: piece.width / 2, y: piece.height / 2 };
  const room = Math.min(piece.width, piece.height);
  if (art.motif === 'words') {
    if (art.words === '') return [];
    const space = roomForWords(piece);
    const size = Math.min(room * 0.62, space.width / textWidth(art.words, 1));
    return [
      {
        kind: 'text',
        key: `${key}:words`,
        role: 'art',
        piece: piece.id,
        at: { x: space.middle, y: centre.y + size * 0.32 },
        text: art.words,
        size,
        align: 'middle',
        ink: art.ink,
      },
    ];
  }
  return outlines(art.motif, centre, room * 0.38).map(
    (outline, index): Item => ({
      kind: 'path',
      key: `${key}:art${index}`,
      role: 'art',
      piece: piece.id,
      outline,
      ink: art.ink,
      open: art.motif === 'branch' && index === 0,
    }),
  );
}
