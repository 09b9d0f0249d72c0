import type { Point } from '@trimwell/geometry';
import {
  type GroupItem,
  type Item,
  itemMark,
  type Mark,
  type MarkContext,
  patternId,
  shiftItem,
  unit,
} from '@trimwell/handout';

/** How far the shadow of a piece lies from it, in ticks: it is drawn there and not moved there by a style. */
const SHADOW: Point = { x: 0.4 * 640, y: 0.7 * 640 };

/** A mark with the patterns that only it is filled with. */
export interface Laid {
  readonly mark: Mark;
  readonly patterns: readonly Mark[];
}

function withShadow(item: Item): Item {
  if (item.kind === 'group') return { ...item, items: item.items.map(withShadow) };
  return item.role === 'shadow' ? shiftItem(item, SHADOW) : item;
}

/** A group drawn where it lies; its prints stay fixed to it, by patterns of its own that are moved with it. */
function laidGroup(group: GroupItem, context: MarkContext): Laid {
  const by = { x: group.move.x - group.origin.x, y: group.move.y - group.origin.y };
  const own = (paper: string): string => `${paper}--${group.piece ?? group.key}`;
  const looks = { ...context.looks };
  const patterns = new Map<string, Mark>();
  const items = group.items.map((item): Item => {
    const moved = shiftItem(item, by);
    if (moved.kind !== 'path' || !moved.fill) return moved;
    const { paper } = moved.fill;
    const look = context.looks[paper];
    if (!look) return moved;
    looks[own(paper)] = look;
    const id = patternId(context.prefix, own(paper));
    const attributes = {
      id,
      href: `#${patternId(context.prefix, paper)}`,
      patternTransform: `translate(${unit(by.x)} ${unit(by.y)})`,
    };
    patterns.set(id, { tag: 'pattern', key: id, attributes });
    return { ...moved, fill: { paper: own(paper) } };
  });
  const { transform: _, ...attributes } = itemMark({ ...group, items: [] }, context).attributes;
  const children = items.map((item) => itemMark(item, { ...context, looks }));
  return { mark: { tag: 'g', key: group.key, attributes, children }, patterns: [...patterns.values()] };
}

/**
 * An item without a transform of its own, as far as it is not turned. A browser pays for a transform that changes with a new
 * composition of the whole page (seen in Chromium: 1.4 ms a move on a full table), and for a path that changes with
 * painting that path.
 */
export function laidMark(item: Item, context: MarkContext): Laid {
  const shadowed = withShadow(item);
  if (shadowed.kind === 'group' && shadowed.turn === 0) return laidGroup(shadowed, context);
  return { mark: itemMark(shadowed, context), patterns: [] };
}
