import type { Length } from '../length/length.js';
import type { Size } from '../rect/rect.js';

/** Radii of the four corners, clockwise from the top left. */
export interface CornerRadii {
  readonly tl: Length;
  readonly tr: Length;
  readonly br: Length;
  readonly bl: Length;
}

/** An edge whose two corners need more than its length. */
export interface TightEdge {
  readonly edge: 'top' | 'right' | 'bottom' | 'left';
  readonly length: number;
  /** The sum of the two radii on it. */
  readonly needed: number;
}

/** Edges on which the radii of the two corners overlap, clockwise from the top; a finding, never a change of the document. */
export function tightEdges({ width, height }: Size, { tl, tr, br, bl }: CornerRadii): readonly TightEdge[] {
  const edges: readonly TightEdge[] = [
    { edge: 'top', length: width, needed: tl + tr },
    { edge: 'right', length: height, needed: tr + br },
    { edge: 'bottom', length: width, needed: br + bl },
    { edge: 'left', length: height, needed: bl + tl },
  ];
  return edges.filter(({ length, needed }) => needed > length);
}

/**
 * The radii that can be drawn: all four made smaller by the same factor until no edge is too short, as in CSS Backgrounds
 * and Borders 3, "Corner Curves: overlapping curves". The document keeps its own.
 */
export function drawnRadii(size: Size, radii: CornerRadii): { readonly [corner in keyof CornerRadii]: number } {
  const factor = Math.min(1, ...tightEdges(size, radii).map(({ length, needed }) => length / needed));
  const { tl, tr, br, bl } = radii;
  return { tl: tl * factor, tr: tr * factor, br: br * factor, bl: bl * factor };
}
