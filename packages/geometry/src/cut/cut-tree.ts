import { type Length, ticks } from '../length/length.js';
import { type Rect, rect, splitRect } from '../rect/rect.js';

/** A part that is used as it is. `turned`: its sides are exchanged against the blank's. */
export interface BlankNode {
  readonly is: 'blank';
  readonly blank: string;
  readonly turned: boolean;
}

/** A part that is left over. */
export interface OffcutNode {
  readonly is: 'offcut';
}

/** A part cut in two from edge to edge, `at` ticks from its left (vertical) or top (horizontal) edge. */
export interface SplitNode {
  readonly is: 'cut';
  readonly direction: 'vertical' | 'horizontal';
  readonly at: Length;
  readonly first: CutNode;
  readonly second: CutNode;
}

/**
 * Five parts turned around a centre by four cuts that stop inside the part. For a clockwise pinwheel over w x h with
 * 0 <= x1 <= x2 <= w and 0 <= y1 <= y2 <= h: top = (0,0)-(x2,y1), right = (x2,0)-(w,y2), bottom = (x1,y2)-(w,h),
 * left = (0,y1)-(x1,h), centre = (x1,y1)-(x2,y2); counterclockwise is its mirror image, left to right. Kerf is 0.
 */
export interface PinwheelNode {
  readonly is: 'pinwheel';
  readonly hand: 'clockwise' | 'counterclockwise';
  readonly x1: Length;
  readonly x2: Length;
  readonly y1: Length;
  readonly y2: Length;
  readonly top: CutNode;
  readonly right: CutNode;
  readonly bottom: CutNode;
  readonly left: CutNode;
  readonly centre: CutNode;
}

/**
 * How one rectangle is cut up. Leaves carry no coordinates: places come from folding the tree over the sheet, so
 * overlaps and parts outside the sheet cannot be written down.
 */
export type CutNode = BlankNode | OffcutNode | SplitNode | PinwheelNode;

/** The parts of a pinwheel over `box`, in the order top, right, bottom, left, centre; a part may have no area. */
export function pinwheelParts(node: PinwheelNode, box: Rect): readonly (readonly [CutNode, Rect])[] {
  const { x1, x2, y1, y2 } = node;
  const { width: w, height: h } = box;
  const place = (x: number, y: number, right: number, bottom: number): Rect => {
    const left = node.hand === 'clockwise' ? x : w - right;
    return rect(box.x + left, box.y + y, right - x, bottom - y);
  };
  return [
    [node.top, place(0, 0, x2, y1)],
    [node.right, place(x2, 0, w, y2)],
    [node.bottom, place(x1, y2, w, h)],
    [node.left, place(0, y1, x1, h)],
    [node.centre, place(x1, y1, x2, y2)],
  ];
}

/** `node` with every part of it made anew by `make`; a leaf stays itself. */
export function mapParts(node: CutNode, make: (part: CutNode) => CutNode): CutNode {
  if (node.is === 'cut') return { ...node, first: make(node.first), second: make(node.second) };
  if (node.is !== 'pinwheel') return node;
  const { top, right, bottom, left, centre } = node;
  return { ...node, top: make(top), right: make(right), bottom: make(bottom), left: make(left), centre: make(centre) };
}

/**
 * Visits every node of `node` with the rectangle it occupies in `box`, parents before children, near part first.
 * @throws RangeError when a cut would leave an empty part.
 */
export function eachNode(node: CutNode, box: Rect, kerf: Length, visit: (node: CutNode, box: Rect) => void): void {
  visit(node, box);
  if (node.is === 'cut') {
    const [first, second] = splitRect(box, node.direction === 'vertical' ? 'x' : 'y', node.at, kerf);
    eachNode(node.first, first, kerf, visit);
    eachNode(node.second, second, kerf, visit);
  } else if (node.is === 'pinwheel') {
    for (const [part, partBox] of pinwheelParts(node, box)) eachNode(part, partBox, kerf, visit);
  }
}

/** Visits every leaf (blank or offcut) of `node` with the rectangle it occupies in `box`, near part first. */
export function eachLeaf(
  node: CutNode,
  box: Rect,
  kerf: Length,
  visit: (leaf: BlankNode | OffcutNode, box: Rect) => void,
): void {
  eachNode(node, box, kerf, (found, place) => {
    if (found.is === 'blank' || found.is === 'offcut') visit(found, place);
  });
}

/** The part of a sheet inside its margins. @throws RangeError when the margins leave nothing. */
export function usableRect(paper: {
  readonly width: Length;
  readonly height: Length;
  readonly margins: { readonly top: Length; readonly right: Length; readonly bottom: Length; readonly left: Length };
}): Rect {
  const { margins } = paper;
  const width = ticks(paper.width - margins.left - margins.right);
  const height = ticks(paper.height - margins.top - margins.bottom);
  if (width <= 0 || height <= 0) throw new RangeError('The margins leave nothing of the sheet.');
  return { x: margins.left, y: margins.top, width, height };
}
