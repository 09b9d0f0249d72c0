import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { PNG } from 'pngjs';
import { read } from './read-pdf.js';

/** A picture in shades of red, green, blue and opacity, a byte each. */
export type Picture = Pick<PNG, 'width' | 'height' | 'data'>;

/** The first page of a PDF as a picture. */
export function paintPdf(bytes: Uint8Array, dotsPerInch: number): Picture {
  return PNG.sync.read(read('pdftoppm', bytes, ['-r', String(dotsPerInch), '-singlefile', '-png', 'FILE']).bytes);
}

/** An SVG as a picture on white. */
export function paintSvg(text: string, dotsPerInch: number): Picture {
  const args = ['-d', String(dotsPerInch), '-p', String(dotsPerInch), '-b', 'white', 'FILE'];
  return PNG.sync.read(read('rsvg-convert', text, args).bytes);
}

/** The mean absolute difference of two pictures over all colours, from 0 for equal to 255. */
export function difference(one: Picture, other: Picture): number {
  if (one.width !== other.width || one.height !== other.height)
    throw new Error(`The pictures are ${one.width} x ${one.height} and ${other.width} x ${other.height}.`);
  let sum = 0;
  for (let at = 0; at < one.data.length; at += 4)
    for (let colour = 0; colour < 3; colour += 1)
      sum += Math.abs((one.data[at + colour] ?? 0) - (other.data[at + colour] ?? 0));
  return sum / ((one.data.length / 4) * 3);
}

/** A picture with the mean of each square of `by` dots as one dot: what is left does not hang on where lines meet dots. */
export function shrink(picture: Picture, by: number): Picture {
  const small = new PNG({ width: Math.floor(picture.width / by), height: Math.floor(picture.height / by) });
  for (let at = 0; at < small.data.length; at += 1) {
    const [dot, colour] = [Math.floor(at / 4), at % 4];
    const [left, top] = [(dot % small.width) * by, Math.floor(dot / small.width) * by];
    let sum = 0;
    for (let y = top; y < top + by; y += 1)
      for (let x = left; x < left + by; x += 1) sum += picture.data[(y * picture.width + x) * 4 + colour] ?? 0;
    small.data[at] = Math.round(sum / (by * by));
  }
  return small;
}

/** The largest mean difference of any square of `side` dots: a letter that is missing is lost in the mean of a page. */
export function largestDifference(one: Picture, other: Picture, side: number): number {
  let largest = 0;
  for (let top = 0; top + side <= one.height; top += side)
    for (let left = 0; left + side <= one.width; left += side) {
      const cut = (from: Picture): Picture => {
        const part = new PNG({ width: side, height: side });
        PNG.bitblt(from as PNG, part, left, top, side, side, 0, 0);
        return part;
      };
      largest = Math.max(largest, difference(cut(one), cut(other)));
    }
  return largest;
}

const folder = fileURLToPath(new URL('./pdf-pictures/', import.meta.url));

/**
 * The picture that is stored under a name. With TRIMWELL_PICTURES=store the picture at hand is stored first: look at it
 * before it is kept.
 */
export function storedPicture(name: string, now: Picture): Picture {
  const file = `${folder}${name}.png`;
  if (process.env['TRIMWELL_PICTURES'] === 'store') {
    mkdirSync(folder, { recursive: true });
    writeFileSync(file, PNG.sync.write(now as PNG, { colorType: 2 }));
  }
  if (!existsSync(file)) throw new Error(`There is no picture ${file}; TRIMWELL_PICTURES=store makes it.`);
  return PNG.sync.read(readFileSync(file));
}
