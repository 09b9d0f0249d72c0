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

/** A rectangle in floating ticks. */
export interface Box {
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
 * or down to 70 % of it; else the letter alone, as small as the share `least`. Nothing when not even that fits: such a part
 * wants a leader. Since parts of a sheet do not overlap, labels never do.
 */
export function placeLabel({ letter, figure }: PartLabel, box: Box, size: number, least = TINY): readonly PlacedText[] {
  const choices: readonly (readonly string[])[] = [[letter, figure], [`${letter}  ${figure}`]];
  for (const share of [1, 0.85, SMALLEST]) {
    for (const texts of choices) {
      if (fits(texts, size * share, box.width, box.height)) return lines(texts, size * share, box, 0);
      if (fits(texts, size * share, box.height, box.width)) return lines(texts, size * share, box, -90);
    }
  }
  for (const share of [1, SMALLEST, 0.5, 0.4, TINY].filter((each) => each >= least)) {
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

/** A part whose label stands outside, and what is said of it. */
export interface FarPart {
  readonly key: string;
  readonly text: string;
  readonly box: Box;
}

/** Where along its part a leader may end, as shares of the part's height, the best first. */
const ENDS = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9];

/** The middle of a part or, where a level line from there to the right would run through a text, a place above or below. */
function leaderEnd({ box }: FarPart, taken: readonly Box[], room: number): Point {
  const x = box.x + box.width / 2;
  const clear = (y: number): boolean =>
    taken.every((text) => text.x + text.width < x || text.y > y + room || text.y + text.height < y - room);
  const places = ENDS.map((share) => box.y + box.height * share);
  return { x, y: places.find(clear) ?? box.y + box.height / 2 };
}

/** A label outside and the line from it to the middle of its part. */
export interface FarLabel {
  readonly key: string;
  readonly text: PlacedText;
  readonly from: Point;
  readonly to: Point;
}

/** Distance from line to line of labels outside, and from the sheet to them, in ems. */
const FAR_LINE = 1.3;
const FAR_GAP = 1.1;

/**
 * The places nearest to `wanted`, in the same order, that are at least `pitch` apart and between `from` and `to`; where
 * there is not room enough for all, they begin at `from` and go beyond `to`. `wanted` rises. Linear but for merging.
 */
export function spreadApart(wanted: readonly number[], pitch: number, from: number, to: number): readonly number[] {
  const runs: { start: number; count: number; sum: number }[] = [];
  const held = (start: number, count: number): number => Math.max(from, Math.min(start, to - (count - 1) * pitch));
  wanted.forEach((place) => {
    let run = { start: held(place, 1), count: 1, sum: place };
    // A run that would touch the one before joins it, and both move to where they are nearest to their places together.
    for (let last = runs.at(-1); last && last.start + last.count * pitch > run.start; last = runs.at(-1)) {
      runs.pop();
      const count = last.count + run.count;
      const sum = last.sum + run.sum - last.count * run.count * pitch;
      run = { start: held(sum / count, count), count, sum };
    }
    runs.push(run);
  });
  return runs.flatMap(({ start, count }) => Array.from({ length: count }, (_, index) => start + index * pitch));
}

/**
 * Labels to the right of `sheet` for the parts that are too small for any, one under the other, each with a leader to
 * its part, clear of the texts that are `taken` where that can be. Leaders to parts in one column do not cross, since
 * labels stand in the order of their parts.
 */
export function placeFarLabels(
  parts: readonly FarPart[],
  sheet: Box,
  size: number,
  taken: readonly Box[] = [],
): readonly FarLabel[] {
  const ends = new Map(parts.map((part) => [part, leaderEnd(part, taken, 0.2 * size)]));
  const middle = (part: FarPart): Point => ends.get(part) ?? { x: part.box.x, y: part.box.y };
  const sorted = [...parts].sort((a, b) => middle(a).y - middle(b).y || middle(b).x - middle(a).x);
  const pitch = FAR_LINE * size;
  const places = spreadApart(
    sorted.map((part) => middle(part).y),
    pitch,
    sheet.y + size / 2,
    sheet.y + sheet.height - size / 2,
  );
  const edge = sheet.x + sheet.width + FAR_GAP * size;
  return sorted.map((part, index) => {
    const y = places[index] ?? middle(part).y;
    const at = { x: edge + textWidth(part.text, size) / 2, y: y + 0.35 * size };
    return {
      key: part.key,
      text: { text: part.text, at, size, turn: 0 },
      from: { x: edge - 0.25 * size, y },
      to: middle(part),
    };
  });
}

/** The rectangle that a placed text covers, for checking that none collide. */
export function placedBox({ text, at, size, turn }: PlacedText): Box {
  const [width, height] = [textWidth(text, size), size];
  return turn === 0
    ? { x: at.x - width / 2, y: at.y - 0.85 * size, width, height }
    : { x: at.x - 0.85 * size, y: at.y - width / 2, width: height, height: width };
}
