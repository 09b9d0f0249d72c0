/** Fine enough for paper, and no larger than what a photograph of a sheet was taken to. */
const QUALITY = 0.92;

async function asJpeg(photo: Blob): Promise<Blob> {
  const picture = await createImageBitmap(photo);
  const canvas = new OffscreenCanvas(picture.width, picture.height);
  const context = canvas.getContext('2d');
  if (!context) throw new Error('This browser cannot turn a photograph into one that a PDF can hold.');
  // What can be seen through has paper behind it.
  context.fillStyle = '#ffffff';
  context.fillRect(0, 0, picture.width, picture.height);
  context.drawImage(picture, 0, 0);
  picture.close();
  return canvas.convertToBlob({ type: 'image/jpeg', quality: QUALITY });
}

/** Photographs as a PDF can hold them, by their hashes: JPEG and PNG as they are, anything else as JPEG. */
export async function printablePhotos(
  photos: ReadonlyMap<string, Blob>,
): Promise<ReadonlyMap<string, Uint8Array<ArrayBuffer>>> {
  const found = new Map<string, Uint8Array<ArrayBuffer>>();
  for (const [id, photo] of photos) {
    const fit = photo.type === 'image/jpeg' || photo.type === 'image/png' ? photo : await asJpeg(photo);
    found.set(id, new Uint8Array(await fit.arrayBuffer()));
  }
  return found;
}
