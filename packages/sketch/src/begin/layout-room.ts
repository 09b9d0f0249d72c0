import type { Unit } from '@trimwell/geometry';

/** A rectangle in whole steps of the ruler, so that nothing laid out can be off it. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The room that a layout has, in ruler steps (1/16 in or 1 mm), and the measures that go with its unit. */
export interface Room {
  readonly face: Box;
  /** What a mat shows, and what the card shows around the lowest panel: 1/8 in or 3 mm. */
  readonly reveal: number;
  /** Space between pieces that lie side by side: 1/8 in or 3 mm. */
  readonly gap: number;
  /** Least side of a piece: 3/8 in or 10 mm, which can be held while it is cut. */
  readonly least: number;
  /** True when the card has an inside. */
  readonly opens: boolean;
}

export function roomOf(unit: Unit, across: number, down: number, opens: boolean): Room {
  const face = { x: 0, y: 0, width: across, height: down };
  return unit === 'in' ? { face, reveal: 2, gap: 2, least: 6, opens } : { face, reveal: 3, gap: 3, least: 10, opens };
}

/** `box` made smaller by so many steps on each side. */
export function inset({ x, y, width, height }: Box, by: number): Box {
  return { x: x + by, y: y + by, width: width - 2 * by, height: height - 2 * by };
}

/** About `share` of `whole`, made so that what is left can be halved: the piece is centred on a whole step. */
export function evenShare(whole: number, share: number, least = 1): number {
  const wanted = Math.min(whole, Math.max(least, Math.round(whole * share)));
  const odd = (whole - wanted) % 2 !== 0;
  if (!odd) return wanted;
  return wanted - 1 >= least ? wanted - 1 : Math.min(whole, wanted + 1);
}

/** A box of about these shares of `box`, in its exact middle. */
export function middle(box: Box, share: { readonly across: number; readonly down: number }, least = 1): Box {
  const width = evenShare(box.width, share.across, least);
  const height = evenShare(box.height, share.down, least);
  return { x: box.x + (box.width - width) / 2, y: box.y + (box.height - height) / 2, width, height };
}

/**
 * A square in the middle of `box`, about `share` of its shorter side. It is exact across the shorter side of the card;
 * along the other it may lie half a step off, since a square cannot suit an odd and an even length at once.
 */
export function square(box: Box, share: number, least = 1): Box {
  const side = evenShare(Math.min(box.width, box.height), share, least);
  return {
    x: box.x + Math.floor((box.width - side) / 2),
    y: box.y + Math.floor((box.height - side) / 2),
    width: side,
    height: side,
  };
}

/** True for a card that lies: what stands below on an upright one stands beside then. */
export function lies({ width, height }: Box): boolean {
  return width > height * 1.15;
}

/** `box` in two along its longer side (a square one from top to bottom); the first has `share` of it. */
export function split(box: Box, share: number): readonly [Box, Box] {
  if (lies(box)) {
    const width = Math.round(box.width * share);
    return [
      { ...box, width },
      { ...box, x: box.x + width, width: box.width - width },
    ];
  }
  const height = Math.round(box.height * share);
  return [
    { ...box, height },
    { ...box, y: box.y + height, height: box.height - height },
  ];
}

/** The gap nearest to `gap` that leaves `count` equal whole parts of `length`. */
function fittingGap(length: number, count: number, gap: number): number {
  const tries = Array.from({ length: count }, (_, index) => [gap + index, gap - index]).flat();
  const fits = (g: number): boolean => g >= 1 && (length - g * (count - 1)) % count === 0;
  return tries.find(fits) ?? gap;
}

/** `box` in `count` equal columns with about `gap` between them; nothing is left over. */
export function columns(box: Box, count: number, gap: number): readonly Box[] {
  const between = fittingGap(box.width, count, gap);
  const width = (box.width - between * (count - 1)) / count;
  return Array.from({ length: count }, (_, index) => ({ ...box, x: box.x + index * (width + between), width }));
}

/** `box` in `count` equal rows with about `gap` between them; nothing is left over. */
export function rows(box: Box, count: number, gap: number): readonly Box[] {
  const between = fittingGap(box.height, count, gap);
  const height = (box.height - between * (count - 1)) / count;
  return Array.from({ length: count }, (_, index) => ({ ...box, y: box.y + index * (height + between), height }));
}
