import { type PDFContext, type PDFRef, PDFString } from '@cantoo/pdf-lib';
import type { Glyph } from 'fontkit';
import type { LoadedFont } from './fonts.js';

/** A subset as it really is; its published types give other results. */
interface GlyphSubset {
  /** Takes a glyph in by its number in the font; returns its number in the subset. */
  includeGlyph(glyph: number): number;
  encode(): Uint8Array;
}

function hex(value: number, digits = 4): string {
  return value.toString(16).toUpperCase().padStart(digits, '0');
}

function utf16(codePoints: readonly number[]): string {
  const text = String.fromCodePoint(...codePoints);
  return Array.from({ length: text.length }, (_, index) => hex(text.charCodeAt(index))).join('');
}

/** Six capital letters that say which glyphs a subset holds (ISO 32000-2, 9.9.2): the same glyphs, the same letters. */
function subsetTag(glyphs: readonly Glyph[]): string {
  let hash = 0x811c9dc5;
  for (const { id } of glyphs) hash = Math.imul(hash ^ id, 0x01000193) >>> 0;
  return Array.from({ length: 6 }, (_, index) => String.fromCharCode(65 + (Math.floor(hash / 26 ** index) % 26))).join(
    '',
  );
}

/** A code space of two bytes and what every code means (ISO 32000-2, 9.10.3), at most a hundred to a part. */
function unicodeMap(glyphs: readonly Glyph[]): string {
  const lines = glyphs.map(({ codePoints }, index) => `<${hex(index + 1)}> <${utf16(codePoints)}>`);
  const parts = Array.from({ length: Math.ceil(lines.length / 100) }, (_, part) => {
    const some = lines.slice(part * 100, part * 100 + 100);
    return `${some.length} beginbfchar\n${some.join('\n')}\nendbfchar`;
  });
  return [
    '/CIDInit /ProcSet findresource begin',
    '12 dict begin',
    'begincmap',
    '/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def',
    '/CMapName /Adobe-Identity-UCS def',
    '/CMapType 2 def',
    '1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange',
    ...parts,
    'endcmap',
    'CMapName currentdict /CMap defineresource pop',
    'end',
    'end',
  ].join('\n');
}

/** A font as far as a document uses it: glyphs are numbered in the order in which they first come. */
export class EmbeddedFont {
  readonly #glyphs: Glyph[] = [];
  readonly #codes = new Map<number, number>();
  readonly #subset: GlyphSubset;

  constructor(
    private readonly loaded: LoadedFont,
    readonly ref: PDFRef,
  ) {
    this.#subset = loaded.font.createSubset() as unknown as GlyphSubset;
  }

  /** The two bytes of a glyph, as four hexadecimal digits. */
  code(glyph: Glyph): string {
    let code = this.#codes.get(glyph.id);
    if (code === undefined) {
      code = this.#subset.includeGlyph(glyph.id);
      this.#codes.set(glyph.id, code);
      this.#glyphs.push(glyph);
    }
    return hex(code);
  }

  /** Writes the font with the glyphs that were asked for, under `ref`. */
  write(context: PDFContext): void {
    const { font } = this.loaded;
    const scale = 1000 / font.unitsPerEm;
    const name = `${subsetTag(this.#glyphs)}+${font.postscriptName}`;
    const italic = font.italicAngle !== 0;
    const { minX, minY, maxX, maxY } = font.bbox;
    const descriptor = context.register(
      context.obj({
        Type: 'FontDescriptor',
        FontName: name,
        // Symbolic, for the codes are ours (ISO 32000-2, table 121, bits 3 and 7).
        Flags: 4 + (italic ? 64 : 0),
        FontBBox: [minX * scale, minY * scale, maxX * scale, maxY * scale],
        ItalicAngle: font.italicAngle,
        Ascent: font.ascent * scale,
        Descent: font.descent * scale,
        CapHeight: font.capHeight * scale,
        XHeight: font.xHeight * scale,
        StemV: font['OS/2'].usWeightClass >= 600 ? 120 : 80,
        FontFile2: context.register(context.flateStream(this.#subset.encode())),
      }),
    );
    const descendant = context.register(
      context.obj({
        Type: 'Font',
        Subtype: 'CIDFontType2',
        CIDToGIDMap: 'Identity',
        BaseFont: name,
        CIDSystemInfo: { Registry: PDFString.of('Adobe'), Ordering: PDFString.of('Identity'), Supplement: 0 },
        FontDescriptor: descriptor,
        W: [1, this.#glyphs.map(({ advanceWidth }) => advanceWidth * scale)],
      }),
    );
    context.assign(
      this.ref,
      context.obj({
        Type: 'Font',
        Subtype: 'Type0',
        BaseFont: name,
        Encoding: 'Identity-H',
        DescendantFonts: [descendant],
        ToUnicode: context.register(context.flateStream(unicodeMap(this.#glyphs))),
      }),
    );
  }
}
