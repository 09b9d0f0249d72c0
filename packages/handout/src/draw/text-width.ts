/** Widths in thousandths of an em of a usual sans-serif face, on the wide side; anything else counts as a wide letter. */
const NARROW = new Set([..." .,:;|!ijltI'’⁄/"]);
const MIDDLE = new Set([...'0123456789abcdeghknopqsuvxyzfr-−+×≈()"″']);

/** Width of `text` at `size`, estimated on the wide side, so that what fits by it fits in print. */
export function textWidth(text: string, size: number): number {
  let thousandths = 0;
  for (const letter of text) thousandths += NARROW.has(letter) ? 360 : MIDDLE.has(letter) ? 640 : 800;
  return (thousandths / 1000) * size;
}
