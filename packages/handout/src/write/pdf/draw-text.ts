import type { TextFace, TextItem } from '../../drawing/drawing.js';
import type { Ink } from '../theme.js';
import { rgb } from './colour.js';
import { combine, type Matrix, POINTS_PER_TICK, place, shift, stretch, turn } from './matrix.js';
import { allPoints, points } from './number.js';
import type { Resources } from './resources.js';
import { type GlyphRun, type PlacedGlyph, shapeText } from './shape-text.js';

/** Width of the rim behind letters, as a share of the em: the same as on the screen. */
const RIM = 0.25;

/** The face of a text that does not state one. */
export function faceOf({ role, face }: Pick<TextItem, 'role' | 'face'>): TextFace {
  return face ?? (role === 'label' ? 'strong' : role === 'art' ? 'art' : 'text');
}

/** Show-text operands: codes, and between them what kerning takes off, in thousandths of the em. */
function shown(glyphs: readonly PlacedGlyph[], code: (glyph: PlacedGlyph) => string): string {
  let operands = '';
  let codes = '';
  let owed = 0;
  const flush = () => {
    if (codes !== '') operands += `<${codes}>`;
    codes = '';
  };
  for (const placed of glyphs) {
    const before = owed - placed.right;
    if (Math.abs(before) >= 0.05) {
      flush();
      operands += points(before);
    }
    codes += code(placed);
    owed = placed.glyph.advanceWidth - placed.advance + placed.right;
  }
  flush();
  return `[${operands}] TJ`;
}

/** Runs of glyphs at one height, for marks that stand above or below their letters. */
function levels(glyphs: readonly PlacedGlyph[]): readonly (readonly PlacedGlyph[])[] {
  const parts: PlacedGlyph[][] = [];
  for (const placed of glyphs) {
    const last = parts.at(-1);
    if (last && last[0]?.rise === placed.rise) last.push(placed);
    else parts.push([placed]);
  }
  return parts;
}

function runOperators(run: GlyphRun, size: number, matrix: Matrix, resources: Resources): string {
  const font = resources.font(run.font);
  const parts = [`/${font.name} ${points(size * POINTS_PER_TICK)} Tf`];
  let along = 0;
  for (const level of levels(run.glyphs)) {
    const rise = ((level[0]?.rise ?? 0) / 1000) * size;
    const at = place(matrix, { x: along, y: rise });
    const [a, b, c, d] = matrix.map((value) => value / POINTS_PER_TICK) as [number, number, number, number];
    parts.push(
      `${allPoints(a, b, c, d, at.x, at.y)} Tm`,
      shown(level, ({ glyph }) => font.code(glyph)),
    );
    along += (level.reduce((sum, { advance }) => sum + advance, 0) / 1000) * size;
  }
  return parts.join('\n');
}

/** The rim as the glyphs' own outlines, so that the text is there once for those who search or listen. */
function rimOperators(run: GlyphRun, size: number, matrix: Matrix): readonly string[] {
  let along = 0;
  return run.glyphs.map(({ glyph, advance, right, rise }) => {
    const scale = size / run.font.font.unitsPerEm;
    const own = combine(
      combine(matrix, shift(along + (right / 1000) * size, (rise / 1000) * size)),
      stretch(scale, scale),
    );
    along += (advance / 1000) * size;
    return glyphOperators(glyph, own);
  });
}

function glyphOperators(glyph: PlacedGlyph['glyph'], matrix: Matrix): string {
  let here = { x: 0, y: 0 };
  const at = (x: number, y: number) => {
    const to = place(matrix, { x, y });
    return allPoints(to.x, to.y);
  };
  const third = (from: number, control: number) => from + (2 / 3) * (control - from);
  const parts = glyph.path.commands.map(({ command, args }) => {
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = args;
    const from = here;
    if (args.length >= 2) here = { x: args.at(-2) ?? 0, y: args.at(-1) ?? 0 };
    switch (command) {
      case 'moveTo':
        return `${at(a, b)} m`;
      case 'lineTo':
        return `${at(a, b)} l`;
      case 'quadraticCurveTo':
        return `${at(third(from.x, a), third(from.y, b))} ${at(third(c, a), third(d, b))} ${at(c, d)} c`;
      case 'bezierCurveTo':
        return `${at(a, b)} ${at(c, d)} ${at(e, f)} c`;
      case 'closePath':
        return 'h';
      default:
        throw new Error(`A glyph is drawn by ${String(command)}, which is not known.`);
    }
  });
  return parts.join('\n');
}

/**
 * A text in the fonts of its face, kerned, turned about its place, on a rim of `halo` where its role has one. `after` is
 * set behind it and counts for no alignment: the space between a line and the next of the same paragraph.
 */
export function textOperators(item: TextItem, ink: Ink, matrix: Matrix, resources: Resources, after = ''): string {
  const { at, size, align } = item;
  const colour = item.ink ?? ink.fill;
  const runs = shapeText(item.text, faceOf(item), resources.fonts);
  const width = (runs.reduce((sum, run) => sum + run.width, 0) / 1000) * size;
  const start = align === 'start' ? 0 : align === 'middle' ? -width / 2 : -width;
  const upright = combine(combine(combine(matrix, shift(at.x, at.y)), turn(item.turn ?? 0)), stretch(1, -1));
  if (colour === undefined || colour === 'none' || runs.length === 0) return '';
  let along = start;
  const placed = [...runs, ...shapeText(after, faceOf(item), resources.fonts)].map((run) => {
    const own = combine(upright, shift(along, 0));
    along += (run.width / 1000) * size;
    return { run, own };
  });
  const rim = placed.flatMap(({ run, own }) => (ink.halo === undefined ? [] : rimOperators(run, size, own)));
  return [
    'q',
    ...(ink.halo === undefined
      ? []
      : [`${rgb(ink.halo)} RG`, `${points(RIM * size * POINTS_PER_TICK)} w`, '1 j', ...rim, 'S']),
    `${rgb(colour)} rg`,
    'BT',
    ...placed.map(({ run, own }) => runOperators(run, size, own, resources)),
    'ET',
    'Q',
  ].join('\n');
}
