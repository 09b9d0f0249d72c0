import { inches, type Length, millimetres, ticks, type Unit } from '@trimwell/geometry';
import type { Sketch } from '@trimwell/sketch';

/** What is written: outlines for cutting machines as SVG or as DXF. */
export const CUT_FILE_FORMATS = ['svg', 'dxf'] as const;
/** One file for each sheet layout, or for each piece alone. */
export const CUT_FILE_GROUPS = ['sheet', 'piece'] as const;
/** Most cards that files are made for. */
export const MOST_CUT_CARDS = 500;

export interface CutFileOptions {
  /** Default `svg`. */
  readonly format?: (typeof CUT_FILE_FORMATS)[number];
  /** Default `sheet`. */
  readonly each?: (typeof CUT_FILE_GROUPS)[number];
  /** How many cards are cut, 1 to 500. Default 1. */
  readonly cards?: number;
  /** Least distance between two pieces on a sheet, in ticks. Default 1/16 in, 1.5 mm in metric files (common practice, no source). */
  readonly gap?: Length;
  /** Least distance to every edge of a sheet, in ticks, where the paper's own margins are not wider. Default 0. */
  readonly margin?: Length;
  /** Unit of all figures in the files. Default the sketch's. */
  readonly unit?: Unit;
  /** Ids of the papers to be cut. Default all that pieces come from. */
  readonly papers?: readonly string[];
  /** Budget of work for nesting, see `nestParts`. */
  readonly work?: number;
}

/** Every option filled in. */
export type CutFileSettings = Required<Omit<CutFileOptions, 'work'>> & Pick<CutFileOptions, 'work'>;

/** An option that cannot be used: `path` names it, `value` is what was found, `allowed` what would do. */
export class CutFileError extends RangeError {
  override readonly name = 'CutFileError';
  constructor(
    readonly path: string,
    readonly value: string,
    readonly allowed: string,
  ) {
    super(`${path} is ${value}; allowed: ${allowed}.`);
  }
}

function oneOf(path: string, value: string, allowed: readonly string[]): void {
  if (!allowed.includes(value)) throw new CutFileError(path, JSON.stringify(value), allowed.join(', '));
}

function whole(path: string, value: number, least: number, most: number, what: string): void {
  if (!Number.isSafeInteger(value) || value < least || value > most)
    throw new CutFileError(path, String(value), `${what} from ${least} to ${most}`);
}

/** Widest gap and margin: 4 in, far more than any machine asks for. */
export const WIDEST_GAP = inches(4);

/** `options` with the defaults filled in. @throws CutFileError for one that cannot be used. */
export function cutFileSettings(sketch: Sketch, options: CutFileOptions): CutFileSettings {
  const unit = options.unit ?? sketch.unit;
  oneOf('unit', unit, ['in', 'mm']);
  const settings = {
    format: options.format ?? 'svg',
    each: options.each ?? 'sheet',
    cards: options.cards ?? 1,
    gap: options.gap ?? (unit === 'mm' ? millimetres(1.5) : inches(1 / 16)),
    margin: options.margin ?? ticks(0),
    unit,
    papers: options.papers ?? sketch.papers.map(({ id }) => id),
    ...(options.work === undefined ? {} : { work: options.work }),
  } satisfies CutFileSettings;
  oneOf('format', settings.format, CUT_FILE_FORMATS);
  oneOf('each', settings.each, CUT_FILE_GROUPS);
  whole('cards', settings.cards, 1, MOST_CUT_CARDS, 'a whole number');
  whole('gap', settings.gap, 0, WIDEST_GAP, 'a whole number of ticks');
  whole('margin', settings.margin, 0, WIDEST_GAP, 'a whole number of ticks');
  settings.papers.forEach((id, index) => {
    const known = sketch.papers.map((paper) => paper.id);
    if (!known.includes(id))
      throw new CutFileError(`papers[${index}]`, JSON.stringify(id), `an id of a paper: ${known.join(', ')}`);
  });
  return settings;
}
