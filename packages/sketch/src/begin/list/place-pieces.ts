import { inches, type Length, millimetres, nearestStep, type Size, ticks, type Unit } from '@trimwell/geometry';
import { rulerStep } from '../../model/ruler-steps.js';

type Place = { readonly x: Length; readonly y: Length };

interface Shelf {
  readonly at: number[];
  width: number;
  height: number;
}

/** `size` in the middle of `card`. */
function centred(card: Size, size: Size): Place {
  return { x: ticks(Math.floor((card.width - size.width) / 2)), y: ticks(Math.floor((card.height - size.height) / 2)) };
}

/** A piece is large when it takes half of the card or more both ways, or does not fit on it. */
function isLarge(card: Size, { width, height }: Size): boolean {
  return (width * 2 >= card.width && height * 2 >= card.height) || width > card.width || height > card.height;
}

/** The pieces `order` in rows of the card's width, tallest first, rows in layers of the card's height. */
function shelvesOf(card: Size, sizes: readonly Size[], order: readonly number[], gap: number): readonly Shelf[][] {
  const layers: Shelf[][] = [];
  let taken = Number.POSITIVE_INFINITY;
  for (const at of order) {
    const size = sizes[at];
    if (!size) continue;
    const shelf = layers.at(-1)?.at(-1);
    if (shelf && shelf.width + gap + size.width <= card.width) {
      shelf.at.push(at);
      shelf.width += gap + size.width;
      continue;
    }
    const fresh: Shelf = { at: [at], width: size.width, height: size.height };
    if (taken + gap + size.height > card.height) {
      layers.push([fresh]);
      taken = size.height;
    } else {
      layers.at(-1)?.push(fresh);
      taken += gap + size.height;
    }
  }
  return layers;
}

/**
 * Places for pieces of a face, as somebody lays out a kit before arranging it: large ones in the middle of the card, the
 * others in rows side by side, tallest first, 1/8 in (3 mm) apart, the rows in the middle of the card. What one cardful of
 * rows does not hold lies in rows on top of it. All that fits on the card lies on it, rows on marks of the ruler.
 */
export function placePieces(card: Size, sizes: readonly Size[], unit: Unit): readonly Place[] {
  const [gap, step] = [unit === 'in' ? inches(1 / 8) : millimetres(3), rulerStep(unit)];
  const places = sizes.map((size) => centred(card, size));
  const small = sizes.flatMap((size, at) => (isLarge(card, size) ? [] : [at]));
  const tall = (at: number): number => sizes[at]?.height ?? 0;
  const order = small.toSorted((one, other) => tall(other) - tall(one) || one - other);
  const within = (value: number, room: number): Length => ticks(Math.max(0, Math.min(nearestStep(value, step), room)));
  for (const layer of shelvesOf(card, sizes, order, gap)) {
    const height = layer.reduce((sum, shelf) => sum + shelf.height + gap, -gap);
    let y = (card.height - height) / 2;
    for (const shelf of layer) {
      let x = (card.width - shelf.width) / 2;
      for (const at of shelf.at) {
        const size = sizes[at];
        if (!size) continue;
        const down = y + (shelf.height - size.height) / 2;
        places[at] = { x: within(x, card.width - size.width), y: within(down, card.height - size.height) };
        x += size.width + gap;
      }
      y += shelf.height + gap;
    }
  }
  return places;
}
