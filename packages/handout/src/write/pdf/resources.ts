import { type PDFContext, type PDFDocument, type PDFImage, PDFNumber, type PDFRef } from '@cantoo/pdf-lib';
import type { Drawing } from '../../drawing/drawing.js';
import { EmbeddedFont } from './embedded-font.js';
import type { Fonts, LoadedFont } from './fonts.js';
import { combine, type Matrix, stretch } from './matrix.js';
import { tileOf } from './tile.js';

/** Fonts, patterns, opacities and pictures of a document, each written once and named in the order of its first use. */
export class Resources {
  readonly ref: PDFRef;
  readonly #fonts = new Map<string, { readonly name: string; readonly font: EmbeddedFont }>();
  readonly #opacities = new Map<number, { readonly name: string; readonly ref: PDFRef }>();
  readonly #patterns = new Map<string, { readonly name: string; readonly ref: PDFRef }>();
  readonly #pictures = new Map<PDFImage, string>();
  readonly #context: PDFContext;

  constructor(
    document: PDFDocument,
    readonly fonts: Fonts,
    private readonly looks: Drawing['looks'],
    /** Embedded pictures by address, and photographs of sheets by hash. */
    private readonly pictures: ReadonlyMap<string, PDFImage>,
  ) {
    this.#context = document.context;
    this.ref = this.#context.nextRef();
  }

  /** The name of a font, and the codes of its glyphs. */
  font(loaded: LoadedFont): { readonly name: string; readonly code: EmbeddedFont['code'] } {
    let known = this.#fonts.get(loaded.name);
    if (!known) {
      known = { name: `F${this.#fonts.size + 1}`, font: new EmbeddedFont(loaded, this.#context.nextRef()) };
      this.#fonts.set(loaded.name, known);
    }
    const { name, font } = known;
    return { name, code: (glyph) => font.code(glyph) };
  }

  /** The name of a graphics state with that opacity of fills. */
  opacity(share: number): string {
    let known = this.#opacities.get(share);
    if (!known) {
      const ref = this.#context.register(this.#context.obj({ Type: 'ExtGState', ca: PDFNumber.of(share) }));
      known = { name: `G${this.#opacities.size + 1}`, ref };
      this.#opacities.set(share, known);
    }
    return known.name;
  }

  /** The name of the pattern of a paper whose tiles lie as `matrix` puts the drawing on the page. */
  pattern(paper: string, matrix: Matrix): string {
    const { look, photo } = this.look(paper);
    const key = `${paper} ${matrix.map((value) => value.toFixed(9)).join(' ')}`;
    let known = this.#patterns.get(key);
    if (!known) {
      const tile = tileOf(look, photo, (share) => this.opacity(share));
      const resources = {
        ...(photo ? { XObject: { [this.picture(photo)]: photo.ref } } : {}),
        ...(tile.opacities.length > 0 ? { ExtGState: this.#opacityDict() } : {}),
      };
      const ref = this.#context.register(
        this.#context.flateStream(photo ? tile.content.replace('@', this.picture(photo)) : tile.content, {
          Type: 'Pattern',
          PatternType: 1,
          PaintType: 1,
          TilingType: 1,
          BBox: [0, 0, tile.width, tile.height],
          XStep: tile.width,
          YStep: tile.height,
          Matrix: [...combine(matrix, stretch(tile.scale, tile.scale))],
          Resources: resources,
        }),
      );
      known = { name: `P${this.#patterns.size + 1}`, ref };
      this.#patterns.set(key, known);
    }
    return known.name;
  }

  /** The look of a paper, with its photograph where it has one that is at hand. @throws Error for an unknown paper */
  look(paper: string): { readonly look: Drawing['looks'][string]; readonly photo: PDFImage | undefined } {
    const look = this.looks[paper];
    if (!look) throw new Error(`An area is of the paper ${JSON.stringify(paper)}, which has no look in the handout.`);
    return { look, photo: look.photo === undefined || !look.sheet ? undefined : this.pictures.get(look.photo) };
  }

  /** The picture at an address. @throws Error when it was not embedded */
  pictureAt(href: string): PDFImage {
    const picture = this.pictures.get(href);
    if (!picture) throw new Error(`There is no picture at ${href.slice(0, 80)}.`);
    return picture;
  }

  /** The name of a picture. */
  picture(image: PDFImage): string {
    const name = this.#pictures.get(image) ?? `I${this.#pictures.size + 1}`;
    this.#pictures.set(image, name);
    return name;
  }

  #opacityDict(): Record<string, PDFRef> {
    return Object.fromEntries([...this.#opacities.values()].map(({ name, ref }) => [name, ref]));
  }

  /** Writes the fonts and the dictionary that all pages share. */
  write(): void {
    for (const { font } of this.#fonts.values()) font.write(this.#context);
    const named = (all: Iterable<{ readonly name: string; readonly ref: PDFRef }>) =>
      Object.fromEntries([...all].map(({ name, ref }) => [name, ref]));
    this.#context.assign(
      this.ref,
      this.#context.obj({
        Font: named([...this.#fonts.values()].map(({ name, font }) => ({ name, ref: font.ref }))),
        ExtGState: this.#opacityDict(),
        Pattern: named(this.#patterns.values()),
        XObject: named([...this.#pictures].map(([image, name]) => ({ name, ref: image.ref }))),
      }),
    );
  }
}
