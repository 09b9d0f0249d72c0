import { ticks } from '../length/length.js';
import type { CutNode } from './cut-tree.js';
import type { Fit } from './fit.js';

/** A tree that is still growing: a free part may become a blank with what is left around it. */
export interface Part {
  readonly width: number;
  readonly height: number;
  /** The kind that fills it, -1 while it is free or has been cut. */
  kind: number;
  turned: boolean;
  cut: {
    readonly direction: 'vertical' | 'horizontal';
    readonly at: number;
    readonly first: Part;
    readonly second: Part;
  } | null;
}

/** A free part. */
export function freePart(width: number, height: number): Part {
  return { width, height, kind: -1, turned: false, cut: null };
}

function split(
  part: Part,
  direction: 'vertical' | 'horizontal',
  near: boolean,
  size: number,
  kerf: number,
): readonly [Part, Part] {
  const { width, height } = part;
  const across = direction === 'vertical' ? width : height;
  const rest = across - size - kerf;
  const make = (side: number): Part => (direction === 'vertical' ? freePart(side, height) : freePart(width, side));
  const wanted = make(size);
  const other = make(rest);
  part.cut = { direction, at: near ? size : rest, first: near ? wanted : other, second: near ? other : wanted };
  return [wanted, other];
}

/** Cuts a blank of `kind` out of the free `part` by `fit`; returns the free parts that are left over. */
export function placeInto(
  part: Part,
  fit: Fit,
  kind: number,
  turned: boolean,
  width: number,
  height: number,
  kerf: number,
): readonly Part[] {
  const free: Part[] = [];
  let at = part;
  const order =
    fit.first === 'vertical' ? (['vertical', 'horizontal'] as const) : (['horizontal', 'vertical'] as const);
  for (const direction of order) {
    const size = direction === 'vertical' ? width : height;
    const across = direction === 'vertical' ? at.width : at.height;
    if (size === across) continue;
    const [wanted, other] = split(at, direction, direction === 'vertical' ? fit.nearX : fit.nearY, size, kerf);
    if (other.width > 0 && other.height > 0) free.push(other);
    at = wanted;
  }
  at.kind = kind;
  at.turned = turned;
  return free;
}

/** The finished tree of a part; blanks are named by the index of their kind. */
export function finish(part: Part): CutNode {
  if (part.cut) {
    const { direction, at, first, second } = part.cut;
    return { is: 'cut', direction, at: ticks(at), first: finish(first), second: finish(second) };
  }
  return part.kind < 0 ? { is: 'offcut' } : { is: 'blank', blank: String(part.kind), turned: part.turned };
}
