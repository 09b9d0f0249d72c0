const NAME = 0x6e616d65;
/** Bytes of an OpenType file's header and of an entry of its table directory ("otff"). */
const HEADER = 12;
const ENTRY = 16;
/** Bytes of the head of a naming table of version 0 and of one of its records ("name"). */
const NAMES_HEAD = 6;
const RECORD = 12;

/** The names that a program looks a font up by: family, subfamily, and the name for PostScript. */
const FAMILY = 1;
const SUBFAMILY = 2;
const POSTSCRIPT = 6;

/** A naming table of version 0 with names in English, as Windows reads them. */
function namingTable(names: readonly (readonly [id: number, text: string])[]): Uint8Array {
  const texts = names.map(([, text]) => text);
  const start = NAMES_HEAD + RECORD * names.length;
  const table = new Uint8Array(start + texts.join('').length * 2);
  const view = new DataView(table.buffer);
  view.setUint16(2, names.length);
  view.setUint16(4, start);
  let at = 0;
  names.forEach(([id, text], index) => {
    const fields = [3, 1, 0x409, id, text.length * 2, at];
    fields.forEach((field, place) => {
      view.setUint16(NAMES_HEAD + RECORD * index + 2 * place, field);
    });
    for (let letter = 0; letter < text.length; letter += 1)
      view.setUint16(start + at + 2 * letter, text.charCodeAt(letter));
    at += text.length * 2;
  });
  return table;
}

/** The sum of a table's words, as the table directory states it ("otff", calculating checksums). */
function checksum(table: Uint8Array): number {
  const whole = new Uint8Array(Math.ceil(table.length / 4) * 4);
  whole.set(table);
  const view = new DataView(whole.buffer);
  let sum = 0;
  for (let at = 0; at < whole.length; at += 4) sum = (sum + view.getUint32(at)) >>> 0;
  return sum;
}

/**
 * A copy of an OpenType font in memory that goes by the name of `family`, for a program that knows no others of a family
 * than those named so: some files name their weight in the family. Weight and slant stay as the font states them.
 * @throws Error for a font without a naming table
 */
export function nameFont(font: Uint8Array, family: string): Uint8Array {
  const view = new DataView(font.buffer, font.byteOffset, font.byteLength);
  const entries = Array.from({ length: view.getUint16(4) }, (_, index) => HEADER + ENTRY * index);
  const entry = entries.find((at) => view.getUint32(at) === NAME);
  if (entry === undefined) throw new Error('A font has no naming table.');
  const names = namingTable([
    [FAMILY, family],
    [SUBFAMILY, 'Regular'],
    [POSTSCRIPT, family.replaceAll(' ', '')],
  ]);
  const start = Math.ceil(font.length / 4) * 4;
  const named = new Uint8Array(start + Math.ceil(names.length / 4) * 4);
  named.set(font);
  named.set(names, start);
  const out = new DataView(named.buffer);
  out.setUint32(entry + 4, checksum(names));
  out.setUint32(entry + 8, start);
  out.setUint32(entry + 12, names.length);
  return named;
}
