import { pictureAddress } from './picture-address.js';

/** Paints an SVG, a pixel of the picture for each of its own, as a PNG. @throws Error where the browser cannot */
export async function paintPicture(
  svg: string,
  { width, height }: { readonly width: number; readonly height: number },
): Promise<Blob> {
  const image = new Image(width, height);
  image.src = pictureAddress(svg);
  await image.decode();
  const canvas = document.createElement('canvas');
  Object.assign(canvas, { width, height });
  const context = canvas.getContext('2d');
  if (!context) throw new Error('this browser has no canvas to paint on');
  context.drawImage(image, 0, 0, width, height);
  const png = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/png'));
  if (!png) throw new Error(`this browser paints no picture of ${width} x ${height} pixels; try a smaller one`);
  return png;
}
