import { unzlibSync } from 'fflate';

const SIGNATURE = 0x774f4646;
/** Bytes of the header and of an entry of the table directory: WOFF 1.0 (W3C), sections 4 and 5; OpenType, "otff". */
const WOFF_HEADER = 44;
const WOFF_ENTRY = 20;
const FONT_HEADER = 12;
const FONT_ENTRY = 16;

interface Table {
  readonly tag: number;
  readonly checksum: number;
  readonly data: Uint8Array;
}

function readTables(woff: Uint8Array, view: DataView): readonly Table[] {
  return Array.from({ length: view.getUint16(12) }, (_, index) => {
    const entry = WOFF_HEADER + WOFF_ENTRY * index;
    const [tag, offset, packed, length, checksum] = [0, 4, 8, 12, 16].map((at) => view.getUint32(entry + at)) as [
      number,
      number,
      number,
      number,
      number,
    ];
    const stored = woff.subarray(offset, offset + packed);
    return { tag, checksum, data: packed === length ? stored : unzlibSync(stored, { out: new Uint8Array(length) }) };
  });
}

function padded(length: number): number {
  return Math.ceil(length / 4) * 4;
}

/**
 * The plain OpenType font in a WOFF file. The font engine would unpack a table again each time that it reads from it,
 * which is for every glyph.
 * @throws Error for bytes that are no WOFF file
 */
export function unpackWoff(woff: Uint8Array): Uint8Array {
  const view = new DataView(woff.buffer, woff.byteOffset, woff.byteLength);
  if (woff.length < WOFF_HEADER || view.getUint32(0) !== SIGNATURE) throw new Error('A font is no WOFF file.');
  const tables = readTables(woff, view);
  const start = FONT_HEADER + FONT_ENTRY * tables.length;
  const font = new Uint8Array(tables.reduce((end, { data }) => end + padded(data.length), start));
  const out = new DataView(font.buffer);
  const power = Math.floor(Math.log2(tables.length));
  out.setUint32(0, view.getUint32(4));
  out.setUint16(4, tables.length);
  out.setUint16(6, 16 * 2 ** power);
  out.setUint16(8, power);
  out.setUint16(10, 16 * (tables.length - 2 ** power));
  let at = start;
  tables.forEach(({ tag, checksum, data }, index) => {
    const entry = FONT_HEADER + FONT_ENTRY * index;
    [tag, checksum, at, data.length].forEach((value, field) => {
      out.setUint32(entry + 4 * field, value);
    });
    font.set(data, at);
    at += padded(data.length);
  });
  return font;
}
