import {
  flattenOutline,
  type Length,
  type NestProof,
  type NestUnmade,
  type Point,
  type Size,
  ticks,
} from '@trimwell/geometry';
import type { Sketch } from '@trimwell/sketch';
import type { TextFile } from '../sheet-guides.js';
import { writeCutDxf } from './cut-dxf.js';
import { type CutFileOptions, type CutFileSettings, cutFileSettings } from './cut-file-options.js';
import type { CutPage } from './cut-page.js';
import { piecePages, sheetPages } from './cut-pages.js';
import { writeCutSvg } from './cut-svg.js';
import { nestPaper, paperCuts } from './nested-sheets.js';
import { readMe } from './read-me.js';

/** One file for a cutting machine. */
export interface CutFile extends TextFile {
  readonly title: string;
  /** How often it is cut. */
  readonly copies: number;
  /** Size of the sheet, or of the piece with its margin, in ticks. */
  readonly width: Length;
  readonly height: Length;
  /** Size of all its lines together, in ticks, as a machine's program shows it when everything is selected. */
  readonly reach: Size;
  /** Closed outlines, and lines to be scored, in it. */
  readonly outlines: number;
  readonly scores: number;
}

/** How one paper is used: sheets in all, whether fewer could ever do, and what no place was left for. */
export interface CutPaperSheets {
  readonly paper: string;
  readonly name: string;
  readonly sheets: number;
  readonly proof: NestProof;
  readonly unmade: readonly {
    readonly blank: string;
    readonly name: string;
    readonly quantity: number;
    readonly reason: NestUnmade['reason'];
  }[];
}

/** Everything for one batch on a cutting machine. */
export interface CutFiles {
  /** In the order of the papers, then of the sheets or pieces. */
  readonly files: readonly CutFile[];
  /** What is cut how often, how to check the size, the cautions: a plain text to go with the files. */
  readonly readMe: TextFile;
  /** One for each paper that is cut; empty when there is a file for each piece. */
  readonly papers: readonly CutPaperSheets[];
  /** False when some piece is larger than its sheet or the sheets at hand run out; `unmade` says which. */
  readonly complete: boolean;
  readonly cards: number;
}

function reachOf({ cut }: CutPage): Size {
  const points = cut.flatMap((outline) => flattenOutline(outline));
  const span = (of: (point: Point) => number): number => {
    const [least, most] = points.reduce(
      ([low, high], point) => [Math.min(low, of(point)), Math.max(high, of(point))] as const,
      [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY] as const,
    );
    return Math.max(0, Math.round(most - least));
  };
  return { width: ticks(span(({ x }) => x)), height: ticks(span(({ y }) => y)) };
}

function cutFile(page: CutPage, { format, unit }: CutFileSettings): CutFile {
  const { stem, title, copies, width, height } = page;
  const svg = format === 'svg';
  return {
    name: `${stem}.${format}`,
    type: svg ? 'image/svg+xml' : 'image/vnd.dxf',
    text: svg ? writeCutSvg(page, unit) : writeCutDxf(page, unit),
    ...{ title, copies, width, height, reach: reachOf(page), outlines: page.cut.length, scores: page.score.length },
  };
}

/**
 * The files for a cutting machine: closed outlines of the finished pieces at true size, with real arcs and profiles, and
 * scores apart from cuts; a sheet (nested by boxes, not bound to straight cuts) or a piece to a file. A piece of a mix
 * lies on the sheets of each of its papers, as the batch deals them. Equal input gives equal files. The cost is that of
 * nesting, see `nestParts`; `options.work` bounds it.
 * @throws CutFileError for an option that cannot be used.
 */
export function cutFiles(sketch: Sketch, options: CutFileOptions = {}): CutFiles {
  const settings = cutFileSettings(sketch, options);
  const cuts = paperCuts(sketch, settings);
  const nested = settings.each === 'piece' ? [] : cuts.map((each) => ({ cuts: each, plan: nestPaper(each, settings) }));
  const pages = settings.each === 'piece' ? piecePages(sketch, cuts, settings) : sheetPages(sketch, nested, settings);
  const files = pages.map((page) => cutFile(page, settings));
  const papers = nested.map(({ cuts: { paper, parts }, plan }): CutPaperSheets => {
    const unmade = plan.unmade.map(({ part: blank, quantity, reason }) => ({
      ...{ blank, quantity, reason, name: parts.get(blank)?.part.name ?? blank },
    }));
    return { paper: paper.id, name: paper.name, sheets: plan.sheets, proof: plan.proof, unmade };
  });
  const { cards, unit } = settings;
  return {
    ...{ files, papers, cards },
    readMe: readMe(sketch.title, unit, { cards, files, papers }),
    complete: papers.every(({ unmade }) => unmade.length === 0),
  };
}
