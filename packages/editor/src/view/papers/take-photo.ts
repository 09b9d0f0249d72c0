import { cropBox, keptExtent, meanColour, type PhotoCrop } from './photo-crop.js';

interface Extent {
  readonly width: number;
  readonly height: number;
}

/** Largest picture that is opened: 40 MB. */
export const LARGEST_PICTURE = 40 * 1024 * 1024;

/** Why a file cannot become a photograph of a sheet, as a sentence. */
export class PhotoProblem extends Error {
  override readonly name = 'PhotoProblem';
}

function megabytes(bytes: number): string {
  return `${(bytes / 1024 / 1024).toFixed(1)} MB`;
}

/** Opens a picture the right way up. @throws PhotoProblem when it is no picture, too large, or cannot be read. */
export async function openPicture(file: File): Promise<ImageBitmap> {
  if (!file.type.startsWith('image/')) {
    const kind = file.type === '' ? 'of no known kind' : file.type;
    throw new PhotoProblem(`“${file.name}” is ${kind}, not a picture. Pick a JPEG, PNG, WebP or another picture.`);
  }
  if (file.size > LARGEST_PICTURE) {
    throw new PhotoProblem(`“${file.name}” has ${megabytes(file.size)}. Pick one of at most 40 MB.`);
  }
  try {
    return await createImageBitmap(file);
  } catch {
    throw new PhotoProblem(
      `“${file.name}” cannot be read as a picture by this browser. Save it as JPEG or PNG and pick that.`,
    );
  }
}

/** Paints the part of `picture` that `crop` takes for `sheet` over the whole canvas. */
export function paintCrop(canvas: HTMLCanvasElement, picture: ImageBitmap, sheet: Extent, crop: PhotoCrop): void {
  const context = canvas.getContext('2d');
  if (!context) return;
  const box = cropBox(picture, sheet, crop);
  const scale = canvas.width / box.width;
  context.setTransform(scale, 0, 0, canvas.height / box.height, -box.x * scale, (-box.y * canvas.height) / box.height);
  const { width, height } = picture;
  if (crop.turns === 1) context.translate(height, 0);
  if (crop.turns === 2) context.translate(width, height);
  if (crop.turns === 3) context.translate(0, width);
  context.rotate((crop.turns * Math.PI) / 2);
  context.imageSmoothingQuality = 'high';
  context.drawImage(picture, 0, 0);
}

function encoded(canvas: HTMLCanvasElement, type: string): Promise<Blob | null> {
  return new Promise((resolve) => canvas.toBlob(resolve, type, 0.86));
}

/** A side of the small picture of which the mean colour is taken. */
const FEW = 24;

function colourOf(canvas: HTMLCanvasElement): string {
  const small = document.createElement('canvas');
  small.width = FEW;
  small.height = FEW;
  const context = small.getContext('2d', { willReadFrequently: true });
  if (!context) throw new PhotoProblem('This browser cannot draw pictures.');
  context.imageSmoothingQuality = 'high';
  context.drawImage(canvas, 0, 0, FEW, FEW);
  return meanColour(context.getImageData(0, 0, FEW, FEW).data);
}

/** A photograph of a sheet, ready to be kept, and its mean colour as `#rrggbb`. */
export interface SheetPhoto {
  readonly blob: Blob;
  readonly colour: string;
}

/** Cuts the photograph of a sheet out of a picture: WebP where the browser writes it, else JPEG. @throws PhotoProblem */
export async function cutPhoto(picture: ImageBitmap, sheet: Extent, crop: PhotoCrop): Promise<SheetPhoto> {
  const canvas = document.createElement('canvas');
  Object.assign(canvas, keptExtent(cropBox(picture, sheet, crop)));
  paintCrop(canvas, picture, sheet, crop);
  const first = await encoded(canvas, 'image/webp');
  // A browser that does not write WebP gives a PNG instead, which is many times as large.
  const blob = first?.type === 'image/webp' ? first : await encoded(canvas, 'image/jpeg');
  if (!blob) throw new PhotoProblem('This browser could not write the picture.');
  return { blob, colour: colourOf(canvas) };
}
