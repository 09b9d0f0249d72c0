import type { PDFDocument, PDFImage } from '@cantoo/pdf-lib';
import type { Drawing, Item } from '../../drawing/drawing.js';
import type { HandoutPages, PageBlock } from '../../page/page.js';

/** The bytes of photographs of sheets, JPEG or PNG, by the hash that a paper's look names. */
export type PhotoBytes = ReadonlyMap<string, Uint8Array>;

function startsWith(bytes: Uint8Array, start: readonly number[]): boolean {
  return start.every((byte, index) => bytes[index] === byte);
}

async function embed(document: PDFDocument, bytes: Uint8Array, name: string): Promise<PDFImage> {
  if (startsWith(bytes, [0xff, 0xd8, 0xff])) return document.embedJpg(bytes);
  if (startsWith(bytes, [0x89, 0x50, 0x4e, 0x47])) return document.embedPng(bytes);
  const found = [...bytes.slice(0, 4)].map((byte) => byte.toString(16).padStart(2, '0')).join(' ');
  throw new Error(`${name} begins with the bytes ${found}; allowed: a JPEG or PNG picture.`);
}

function addressesIn(items: readonly Item[]): readonly string[] {
  return items.flatMap((item) =>
    item.kind === 'image' ? [item.href] : item.kind === 'group' ? addressesIn(item.items) : [],
  );
}

function addressesOf(blocks: readonly PageBlock[]): readonly string[] {
  return blocks.flatMap(({ items, blocks: parts = [] }) => [...addressesIn(items), ...addressesOf(parts)]);
}

/** The bytes that an address itself holds; a handout never asks another machine for anything. */
function bytesOf(href: string): Uint8Array {
  const [, data] = /^data:image\/(?:jpeg|png);base64,([A-Za-z0-9+/=]+)$/.exec(href) ?? [];
  if (data === undefined)
    throw new Error(
      `A picture has the address ${JSON.stringify(href.slice(0, 80))}; allowed: JPEG or PNG as a data URL.`,
    );
  return Uint8Array.from(atob(data), (letter) => letter.charCodeAt(0));
}

function photoHashes(looks: Drawing['looks']): readonly string[] {
  return Object.values(looks).flatMap(({ photo }) => (photo === undefined ? [] : [photo]));
}

/** Embeds each picture once, by its address, and each photograph that is at hand, by its hash. @throws Error */
export async function embedPictures(
  document: PDFDocument,
  { pages, looks }: HandoutPages,
  photos: PhotoBytes = new Map(),
): Promise<ReadonlyMap<string, PDFImage>> {
  const found = new Map<string, PDFImage>();
  for (const hash of new Set(photoHashes(looks))) {
    const bytes = photos.get(hash);
    if (bytes) found.set(hash, await embed(document, bytes, `The photograph ${hash}`));
  }
  for (const href of new Set(pages.flatMap(({ blocks }) => addressesOf(blocks))))
    found.set(href, await embed(document, bytesOf(href), `The picture at ${href.slice(0, 40)}`));
  return found;
}
