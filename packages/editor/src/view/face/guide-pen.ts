import type { Point } from '@trimwell/geometry';
import type { DrawnMarks } from './drawn-marks.js';

export interface Segment {
  readonly from: Point;
  readonly to: Point;
}

interface Words {
  readonly at: Point;
  readonly words: string;
  readonly anchor: 'start' | 'middle';
  readonly name: string;
}

/**
 * Gathers the guides of one moment and draws them in few marks: all lines of a kind are one path, and all casings are one
 * below them. A browser pays for every mark that changes, and at each move of a drag all of them do.
 */
export class GuidePen {
  readonly #lines = new Map<string, string[]>();
  readonly #casings: string[] = [];
  readonly #level: Words[] = [];
  readonly #upwards: Words[] = [];
  readonly #slips: { readonly at: Point; readonly words: string }[] = [];

  line({ from, to }: Segment, name: string, cased = true): void {
    const d = `M${from.x.toFixed(2)} ${from.y.toFixed(2)}L${to.x.toFixed(2)} ${to.y.toFixed(2)}`;
    if (cased) this.#casings.push(d);
    this.#lines.set(name, [...(this.#lines.get(name) ?? []), d]);
  }

  text(at: Point, words: string, anchor: Words['anchor'], name = 'figure'): void {
    this.#level.push({ at, words, anchor, name });
  }

  /** Words that read from below to above. */
  textUpwards(at: Point, words: string, name: string): void {
    this.#upwards.push({ at: { x: -at.y, y: at.x }, words, anchor: 'middle', name });
  }

  /** A figure on a slip of paper. */
  slip(at: Point, words: string): void {
    this.#slips.push({ at, words });
  }

  /** Draws all of it: `upwards` is a group that is turned so that its x runs up the stage and its y to the right. */
  draw(level: DrawnMarks, upwards: DrawnMarks): void {
    if (this.#casings.length > 0) level.draw('path', { d: this.#casings.join(''), class: 'casing' });
    for (const [name, lines] of this.#lines) level.draw('path', { d: lines.join(''), class: name });
    for (const words of this.#level) drawWords(level, words);
    for (const { at, words } of this.#slips) drawSlip(level, at, words);
    for (const words of this.#upwards) drawWords(upwards, words);
  }
}

function drawWords(marks: DrawnMarks, { at, words, anchor, name }: Words): void {
  marks.draw('text', { x: at.x.toFixed(1), y: at.y.toFixed(1), 'text-anchor': anchor, class: name }, words);
}

function drawSlip(marks: DrawnMarks, at: Point, words: string): void {
  const width = words.length * 7 + 18;
  const [x, y] = [String(at.x - width / 2), String(at.y - 17)];
  marks.draw('rect', { width: String(width), height: '24', x, y, rx: '2', class: 'slip' });
  drawWords(marks, { at, words, anchor: 'middle', name: 'slip-figure' });
}
