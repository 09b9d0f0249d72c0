/** A rectangle that is still free, as far as it goes in every direction; such rectangles overlap. */
export interface FreeRect {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

function holds(outer: FreeRect, inner: FreeRect): boolean {
  return (
    inner.x >= outer.x &&
    inner.y >= outer.y &&
    inner.x + inner.width <= outer.x + outer.width &&
    inner.y + inner.height <= outer.y + outer.height
  );
}

/** What is left of `free` beside `box`, at most four rectangles that each go as far as they can. */
function around(free: FreeRect, box: FreeRect): readonly FreeRect[] {
  const [right, bottom] = [free.x + free.width, free.y + free.height];
  const [boxRight, boxBottom] = [box.x + box.width, box.y + box.height];
  if (box.x >= right || boxRight <= free.x || box.y >= bottom || boxBottom <= free.y) return [free];
  const parts: FreeRect[] = [];
  if (box.x > free.x) parts.push({ ...free, width: box.x - free.x });
  if (boxRight < right) parts.push({ ...free, x: boxRight, width: right - boxRight });
  if (box.y > free.y) parts.push({ ...free, height: box.y - free.y });
  if (boxBottom < bottom) parts.push({ ...free, y: boxBottom, height: bottom - boxBottom });
  return parts;
}

/**
 * The largest free rectangles after `box` is placed. Every rectangle that is wholly free lies in one of them, so a part
 * that fits anywhere is never overlooked. Cost: the square of their number.
 */
export function withoutBox(free: readonly FreeRect[], box: FreeRect): readonly FreeRect[] {
  const untouched: FreeRect[] = [];
  const fresh: FreeRect[] = [];
  for (const each of free) {
    const parts = around(each, box);
    if (parts.length === 1 && parts[0] === each) untouched.push(each);
    else fresh.push(...parts);
  }
  // Only a new one can lie within another: those that the box did not touch were the largest before.
  const kept = fresh.filter(
    (part, index) =>
      !untouched.some((other) => holds(other, part)) &&
      !fresh.some((other, at) => at !== index && holds(other, part) && (at < index || !holds(part, other))),
  );
  return [...untouched, ...kept];
}
