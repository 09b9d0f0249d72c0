import type { CutNode } from '../cut/cut-tree.js';
import type { Fit, StripCut } from '../cut/fit.js';
import { ticks } from '../length/length.js';

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

/** Makes one cut of the free `part`; returns the part that goes on, and the other. */
function split(
  part: Part,
  direction: 'vertical' | 'horizontal',
  { at, near }: StripCut,
  kerf: number,
): readonly [Part, Part] {
  const { width, height } = part;
  const rest = (direction === 'vertical' ? width : height) - at - kerf;
  const make = (side: number): Part => (direction === 'vertical' ? freePart(side, height) : freePart(width, side));
  const [first, second] = [make(at), make(rest)];
  part.cut = { direction, at, first, second };
  return near ? [first, second] : [second, first];
}

/** Cuts a blank of `kind` out of the free `part` by `fit`; returns the free parts that are left over. */
export function placeInto(part: Part, fit: Fit, kind: number, turned: boolean, kerf: number): readonly Part[] {
  const free: Part[] = [];
  let at = part;
  const vertical = fit.vertical.map((cut) => ['vertical', cut] as const);
  const horizontal = fit.horizontal.map((cut) => ['horizontal', cut] as const);
  for (const [direction, cut] of fit.first === 'vertical'
    ? [...vertical, ...horizontal]
    : [...horizontal, ...vertical]) {
    const [wanted, other] = split(at, direction, cut, kerf);
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
