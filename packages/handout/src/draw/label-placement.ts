import type { Point } from '@trimwell/geometry';
import { textWidth } from './text-width.js';

/** A line of text with its place, ready to draw; `turn` is 0, or 90 degrees against the clock. */
export interface PlacedText {
  readonly text: string;
  readonly at: Point;
  readonly size: number;
  readonly turn: 0 | -90;
}

/** What has to be said inside a part, most important first: the letter, then the figure. */
export interface PartLabel {
  readonly letter: string;
  readonly figure: string;
}

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Height of a line and free space at its sides, in ems. */
const LINE = 1.25;
const SIDE = 0.25;
/** Letters are never smaller than this share of the wanted size; below it a part goes without its figure. */
const SMALLEST = 0.7;
const TINY = 0.3;

function fits(texts: readonly string[], size: number, along: number, across: number): boolean {
  const widest = Math.max(...texts.map((text) => textWidth(text, size)));
  return widest + 2 * SIDE * size <= along && texts.length * LINE * size <= across;
}

/** Lines one under the other in the middle of `box`, read from the bottom or, turned, from the right (ISO 129-1). */
function lines(texts: readonly string[], size: number, box: Box, turn: 0 | -90): readonly PlacedText[] {
  const centre = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  return texts.map((text, index) => {
    const off = (index - (texts.length - 1) / 2) * LINE * size + 0.35 * size;
    const at = turn === 0 ? { x: centre.x, y: centre.y + off } : { x: centre.x + off, y: centre.y };
    return { text, at, size, turn };
  });
}

/**
 * The texts of one part, all inside it: letter and figure under each other or in one line, upright or turned, at `size`
 * or down to 70 % of it; else the letter alone, as small as 30 %. Nothing when not even that fits. Since parts of a sheet
 * do not overlap, labels never do.
 */
export function placeLabel({ letter, figure }: PartLabel, box: Box, size: number): readonly PlacedText[] {
  const choices: readonly (readonly string[])[] = [[letter, figure], [`${letter}  ${figure}`]];
  for (const share of [1, 0.85, SMALLEST]) {
    for (const texts of choices) {
      if (fits(texts, size * share, box.width, box.height)) return lines(texts, size * share, box, 0);
      if (fits(texts, size * share, box.height, box.width)) return lines(texts, size * share, box, -90);
    }
  }
  for (const share of [1, SMALLEST, 0.5, 0.4, TINY]) {
    if (fits([letter], size * share, box.width, box.height)) return lines([letter], size * share, box, 0);
  }
  return [];
}

/** One text in the middle of a part, at `size` or down to 70 % of it, upright or turned; nothing when it does not fit. */
export function placeNote(text: string, box: Box, size: number): readonly PlacedText[] {
  for (const share of [1, SMALLEST]) {
    if (fits([text], size * share, box.width, box.height)) return lines([text], size * share, box, 0);
    if (fits([text], size * share, box.height, box.width)) return lines([text], size * share, box, -90);
  }
  return [];
}

/** The rectangle that a placed text covers, for checking that none collide. */
export function placedBox({ text, at, size, turn }: PlacedText): Box {
  const [width, height] = [textWidth(text, size), size];
  return turn === 0
    ? { x: at.x - width / 2, y: at.y - 0.85 * size, width, height }
    : { x: at.x - 0.85 * size, y: at.y - width / 2, width: height, height: width };
}
