import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { Resvg as ResvgClass } from '@resvg/resvg-wasm';

/** The drawing program and the fonts, made ready once in a process. */
interface Painter {
  readonly Resvg: typeof ResvgClass;
  readonly fonts: readonly Uint8Array[];
  readonly nameLetters: (svg: string) => string;
  readonly families: { readonly sans: string; readonly serif: string };
}

let ready: Promise<Painter> | null = null;

async function makeReady(): Promise<Painter> {
  const { initWasm, Resvg } = await import('@resvg/resvg-wasm');
  const { loadPictureFonts, nameLetters, PICTURE_FAMILIES } = await import('@trimwell/handout/picture');
  const wasm = createRequire(import.meta.url).resolve('@resvg/resvg-wasm/index_bg.wasm');
  const [program, fonts] = await Promise.all([readFile(wasm), loadPictureFonts()]);
  await initWasm(program);
  return { Resvg, fonts, nameLetters: (svg) => nameLetters(svg, PICTURE_FAMILIES), families: PICTURE_FAMILIES };
}

/**
 * An SVG as PNG, a pixel for each of its own, in the fonts that lie with the handout and in no others, so that it looks the
 * same on every machine.
 * @throws Error when the SVG cannot be read
 */
export async function paintPng(svg: string): Promise<Uint8Array> {
  ready ??= makeReady().catch((error: unknown) => {
    ready = null;
    throw error;
  });
  const { Resvg, fonts, nameLetters, families } = await ready;
  const painter = new Resvg(nameLetters(svg), {
    font: {
      fontBuffers: [...fonts],
      defaultFontFamily: families.sans,
      sansSerifFamily: families.sans,
      serifFamily: families.serif,
    },
  });
  try {
    const image = painter.render();
    try {
      return image.asPng();
    } finally {
      image.free();
    }
  } finally {
    painter.free();
  }
}
