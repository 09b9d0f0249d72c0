import { DESK_WORDS as WORDS } from './desk-words.js';

/** Largest file that is looked at, in bytes. */
const MOST_BYTES = 30_000_000;
/** The longer side of what is kept, in pixels: enough for a whole sheet on paper at 130 dots an inch. */
const LONGEST = 1600;
const QUALITY = 0.86;

/** A photograph as it is used: its name for looks, its address on this page, and its bytes as JPEG. */
export interface Photo {
  readonly id: string;
  readonly address: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

function hexadecimal(bytes: Uint8Array): string {
  return [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** The hash of the bytes (SHA-256); pages without secure contexts have none, and a name of chance does there. */
async function nameOf(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const digest = await crypto.subtle?.digest('SHA-256', bytes);
  return hexadecimal(digest ? new Uint8Array(digest) : crypto.getRandomValues(new Uint8Array(32)));
}

async function scaled(picture: ImageBitmap): Promise<Blob> {
  const scale = Math.min(1, LONGEST / Math.max(picture.width, picture.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(picture.width * scale));
  canvas.height = Math.max(1, Math.round(picture.height * scale));
  const context = canvas.getContext('2d');
  if (!context) throw new Error(WORDS.photographFailed);
  // What can be seen through has paper behind it.
  context.fillStyle = '#ffffff';
  context.fillRect(0, 0, canvas.width, canvas.height);
  context.drawImage(picture, 0, 0, canvas.width, canvas.height);
  return new Promise((resolve, reject) => {
    canvas.toBlob((blob) => (blob ? resolve(blob) : reject(new Error(WORDS.photographFailed))), 'image/jpeg', QUALITY);
  });
}

/** A photograph from a file, made smaller; written anew, so that nothing of where it was taken stays in it. @throws Error, in words for the reader */
export async function takePhoto(file: File): Promise<Photo> {
  if (file.size > MOST_BYTES) throw new Error(WORDS.photographLarge);
  const picture = await createImageBitmap(file).catch(() => null);
  if (!picture) throw new Error(WORDS.photographFailed);
  const blob = await scaled(picture);
  picture.close();
  const bytes = new Uint8Array(await blob.arrayBuffer());
  return { id: await nameOf(bytes), address: URL.createObjectURL(blob), bytes };
}
