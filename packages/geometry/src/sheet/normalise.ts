import type { CutNode, SplitNode } from '../cut/cut-tree.js';
import { cutAllowed } from '../cut/fit.js';
import type { Trimmer } from '../cut/job.js';
import { ticks } from '../length/length.js';

type Direction = SplitNode['direction'];

const OFFCUT: CutNode = { is: 'offcut' };

function across(direction: Direction, width: number, height: number): number {
  return direction === 'vertical' ? width : height;
}

function other(direction: Direction): Direction {
  return direction === 'vertical' ? 'horizontal' : 'vertical';
}

/** How much could be taken off the far side of `node`, across `direction`, without touching a blank. */
function slack(node: CutNode, direction: Direction, width: number, height: number): number {
  if (node.is === 'offcut') return across(direction, width, height);
  if (node.is !== 'cut') return 0;
  if (node.direction === direction) {
    const rest = across(direction, width, height) - node.at;
    return node.second.is === 'offcut'
      ? rest
      : direction === 'vertical'
        ? slack(node.second, direction, rest, height)
        : slack(node.second, direction, width, rest);
  }
  const [w, h] = [width, height];
  const first =
    node.direction === 'vertical' ? slack(node.first, direction, node.at, h) : slack(node.first, direction, w, node.at);
  const second =
    node.direction === 'vertical'
      ? slack(node.second, direction, w - node.at, h)
      : slack(node.second, direction, w, h - node.at);
  return Math.min(first, second);
}

/** `node` with `amount` taken off its far side; `amount` is at most its slack. */
function shortened(node: CutNode, direction: Direction, width: number, height: number, amount: number): CutNode {
  if (node.is !== 'cut') return node;
  if (node.direction === direction) {
    const rest = across(direction, width, height) - node.at;
    if (node.second.is === 'offcut' && amount === rest) return node.first;
    const [w, h] = direction === 'vertical' ? [rest, height] : [width, rest];
    return { ...node, second: shortened(node.second, direction, w, h, amount) };
  }
  const vertical = node.direction === 'vertical';
  const first = vertical
    ? shortened(node.first, direction, node.at, height, amount)
    : shortened(node.first, direction, width, node.at, amount);
  const second = vertical
    ? shortened(node.second, direction, width - node.at, height, amount)
    : shortened(node.second, direction, width, height - node.at, amount);
  return { ...node, first, second };
}

/** Every cut of `node` obeys the trimmer; moving slack about can break a rule that held before. */
function allAllowed(trimmer: Trimmer, node: CutNode, width: number, height: number): boolean {
  if (node.is !== 'cut') return true;
  const vertical = node.direction === 'vertical';
  const [wide, long] = vertical ? [width, height] : [height, width];
  if (!cutAllowed(trimmer, wide, node.at, long)) return false;
  const rest = wide - node.at - trimmer.kerf;
  return vertical
    ? allAllowed(trimmer, node.first, node.at, height) && allAllowed(trimmer, node.second, rest, height)
    : allAllowed(trimmer, node.first, width, node.at) && allAllowed(trimmer, node.second, width, rest);
}

/**
 * The same blanks with fewer, larger offcuts: a cut between two offcuts is left out, and slack that two neighbours
 * share is cut off once for both. Never worse in cuts; a change that the trimmer cannot make is not made. With a kerf
 * only the first is done.
 */
export function normalise(trimmer: Trimmer, node: CutNode, width: number, height: number): CutNode {
  if (node.is !== 'cut') return node;
  const vertical = node.direction === 'vertical';
  const rest = (vertical ? width : height) - node.at - trimmer.kerf;
  const first = vertical
    ? normalise(trimmer, node.first, node.at, height)
    : normalise(trimmer, node.first, width, node.at);
  const second = vertical
    ? normalise(trimmer, node.second, rest, height)
    : normalise(trimmer, node.second, width, rest);
  if (first.is === 'offcut' && second.is === 'offcut') return OFFCUT;
  const here: SplitNode = { ...node, first, second };
  if (trimmer.kerf > 0) return here;
  const side = other(node.direction);
  const shared = slack(here, side, width, height);
  const length = across(side, width, height);
  if (shared <= 0 || shared >= length) return here;
  const [w, h] = side === 'vertical' ? [length - shared, height] : [width, length - shared];
  const moved: SplitNode = {
    is: 'cut',
    direction: side,
    at: ticks(length - shared),
    first: shortened(here, side, width, height, shared),
    second: OFFCUT,
  };
  return w > 0 && h > 0 && allAllowed(trimmer, moved, width, height) ? moved : here;
}
