import type { CutNode } from '../cut/cut-tree.js';
import { cutAllowed, fitsOf } from '../cut/fit.js';
import type { Trimmer } from '../cut/job.js';
import { ticks } from '../length/length.js';
import { finish, freePart, placeInto } from './growing.js';
import { pinwheelCuts, type Slice } from './slice.js';

/** Larger parts first, so that equal ones lie together and one setting serves them all. */
function inOrder(slice: Slice): readonly Slice[] {
  const along = (part: Slice): number => (slice.vertical ? part.w : part.h);
  const across = (part: Slice): number => (slice.vertical ? part.h : part.w);
  return [...slice.parts].sort((a, b) => along(b) - along(a) || across(b) - across(a) || a.kind - b.kind);
}

function cutOf(vertical: boolean, at: number, first: CutNode, second: CutNode): CutNode {
  return { is: 'cut', direction: vertical ? 'vertical' : 'horizontal', at: ticks(at), first, second };
}

const OFFCUT: CutNode = { is: 'offcut' };

/** Parts in a row up to which they are cut off one by one; longer rows are cut in halves, so that no tree is too deep. */
const LONG_ROW = 48;

/** The parts of a row one after the other in a part `width x height`; null when the trimmer cannot. */
function inRow(
  trimmer: Trimmer,
  vertical: boolean,
  parts: readonly Slice[],
  width: number,
  height: number,
): CutNode | null {
  const [part] = parts as readonly [Slice];
  if (parts.length === 1) return realise(trimmer, part, width, height);
  const count = parts.length > LONG_ROW ? parts.length >> 1 : 1;
  const near = parts.slice(0, count);
  const at = near.reduce((sum, { w, h }) => sum + (vertical ? w : h), 0) - trimmer.kerf;
  const [across, along] = vertical ? [width, height] : [height, width];
  if (!cutAllowed(trimmer, across, at, along)) return null;
  const rest = across - at - trimmer.kerf;
  const row = (some: readonly Slice[], side: number): CutNode | null =>
    vertical ? inRow(trimmer, vertical, some, side, height) : inRow(trimmer, vertical, some, width, side);
  const first = row(near, at);
  const second = first && row(parts.slice(count), rest);
  return first && second && cutOf(vertical, at, first, second);
}

/**
 * The cuts that make `slice` out of a part `width x height`: what the whole group does not need is cut off first where
 * the trimmer can, then part after part, the largest first. Null when it is too large, or when no such order obeys the
 * trimmer's rules (another might). Leaves are named by the index of their kind.
 */
export function realise(trimmer: Trimmer, slice: Slice, width: number, height: number): CutNode | null {
  const [w, h] = [slice.w - trimmer.kerf, slice.h - trimmer.kerf];
  if (w > width || h > height) return null;
  if (slice.kind >= 0) {
    const [fit] = fitsOf(trimmer, width, height, w, h);
    if (!fit) return null;
    const part = freePart(width, height);
    placeInto(part, fit, slice.kind, slice.turned, trimmer.kerf);
    return finish(part);
  }
  if (slice.arms) return realiseTrimmed(trimmer, slice, slice.arms, width, height);
  const parts = inOrder(slice);
  const { vertical } = slice;
  const [needed, given, along] = vertical ? [h, height, width] : [w, width, height];
  if (needed < given && cutAllowed(trimmer, given, needed, along)) {
    const inner = vertical ? inRow(trimmer, vertical, parts, width, h) : inRow(trimmer, vertical, parts, w, height);
    if (inner) return cutOf(!vertical, needed, inner, OFFCUT);
  }
  return (
    inRow(trimmer, vertical, parts, width, height) ??
    (needed === given ? null : inRow(trimmer, vertical, [...parts].reverse(), width, height))
  );
}

/** A pinwheel in a part that may be larger: what it does not need is cut off first where the trimmer can. */
function realiseTrimmed(
  trimmer: Trimmer,
  slice: Slice,
  arms: readonly (Slice | null)[],
  width: number,
  height: number,
): CutNode | null {
  const { w, h } = slice;
  if (w < width && cutAllowed(trimmer, width, w, height)) {
    const inner = realiseTrimmed(trimmer, slice, arms, w, height);
    if (inner) return cutOf(true, w, inner, OFFCUT);
  }
  if (h < height && cutAllowed(trimmer, height, h, width)) {
    const inner = realiseTrimmed(trimmer, slice, arms, width, h);
    if (inner) return cutOf(false, h, inner, OFFCUT);
  }
  return realisePinwheel(trimmer, arms, width, height);
}

/** Four cuts that stop, each obeying the trimmer as an edge-to-edge cut of its arm and what lies beside it would. */
function realisePinwheel(trimmer: Trimmer, arms: readonly (Slice | null)[], w: number, h: number): CutNode | null {
  const { x1, x2, y1, y2 } = pinwheelCuts(arms);
  if (!trimmer.stoppedCuts || trimmer.kerf !== 0) return null;
  const can =
    cutAllowed(trimmer, h, y1, x2) &&
    cutAllowed(trimmer, w, x2, y2) &&
    cutAllowed(trimmer, h, y2, w - x1) &&
    cutAllowed(trimmer, w, x1, h - y1);
  if (!can) return null;
  const sizes = [
    [x2, y1],
    [w - x2, y2],
    [w - x1, h - y2],
    [x1, h - y1],
    [x2 - x1, y2 - y1],
  ] as const;
  const made = sizes.map(([width, height], at): CutNode | null => {
    const arm = arms[at];
    return arm ? realise(trimmer, arm, width, height) : OFFCUT;
  });
  const [top, right, bottom, left, centre] = made;
  if (!top || !right || !bottom || !left || !centre) return null;
  return {
    is: 'pinwheel',
    hand: 'clockwise',
    x1: ticks(x1),
    x2: ticks(x2),
    y1: ticks(y1),
    y2: ticks(y2),
    top,
    right,
    bottom,
    left,
    centre,
  };
}
