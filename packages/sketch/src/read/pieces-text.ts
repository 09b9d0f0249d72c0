import { ticks } from '@trimwell/geometry';
import * as z from 'zod/mini';
import { findBroken } from '../model/invariants.js';
import { type Problem, problemAt } from '../model/problem.js';
import { type CopiedPieces, copiedPiecesSchema, type Piece, type Sketch } from '../model/sketch.js';
import { parseJson } from './parse-json.js';
import { scanDocument } from './scan-document.js';
import { schemaProblems } from './schema-problems.js';
import { withoutPhotographs } from './without-photographs.js';

/** The version of copied pieces that this package reads and writes. */
export const PIECES_VERSION = 1;

/** Longest text that is looked at: two hundred ample pieces are a fifth of it. */
const LONGEST = 1_000_000;

export type PiecesReading =
  | { readonly ok: true; readonly copied: CopiedPieces }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** A mat whose piece is not copied along mats nothing; helps of the table they came from stay there. */
function loosened(piece: Piece, ids: ReadonlySet<string>): Piece {
  const { mats, locked: _locked, hidden: _hidden, ...free } = piece;
  return mats && ids.has(mats.piece) ? { ...free, mats } : free;
}

/**
 * The pieces `ids` of `sketch` in gluing order, with the papers, mixes and punches that they need, in the order of the
 * sketch; null when none of them is there.
 */
export function copiedPieces(sketch: Sketch, ids: readonly string[]): CopiedPieces | null {
  const chosen = sketch.pieces.filter(({ id }) => ids.includes(id));
  if (chosen.length === 0) return null;
  const there = new Set(chosen.map(({ id }) => id));
  const from = new Set(chosen.map((piece) => piece.from));
  const mixes = sketch.mixes.filter(({ id }) => from.has(id));
  const papers = new Set([...from, ...mixes.flatMap((mix) => mix.papers)]);
  const punches = new Set(chosen.flatMap(({ punched }) => Object.values(punched)));
  return {
    trimwellCopy: PIECES_VERSION,
    unit: sketch.unit,
    pieces: chosen.map((piece) => loosened(piece, there)),
    papers: sketch.papers.filter(({ id }) => papers.has(id)),
    mixes,
    punches: sketch.punches.filter(({ id }) => punches.has(id)),
  };
}

/**
 * Copied pieces as text for a clipboard: JSON that people can read, lengths as exact texts in the sketch's unit. Photographs
 * of sheets are left out, since nobody knows where it will be pasted.
 */
export function writePiecesText(copied: CopiedPieces): string {
  const schema = copiedPiecesSchema(copied.unit);
  return `${JSON.stringify(z.encode(schema, withoutPhotographs(copied) as z.output<typeof schema>), null, 2)}\n`;
}

/** Copied pieces as a sketch of their own, so that the same rules hold for references; mistakes are in the same places. */
function asSketch({ unit, pieces, papers, mixes, punches }: CopiedPieces): Sketch {
  return {
    trimwell: 1,
    id: 'pieces',
    title: 'Pieces',
    links: [],
    supplies: [],
    unit,
    card: { width: ticks(1), height: ticks(1), fold: 'none', base: papers[0]?.id ?? '' },
    papers,
    mixes,
    punches,
    pieces,
    batch: { cards: 1, contrast: [], stoppedCuts: false, hiddenCentres: false },
    variations: [],
  };
}

function refused(...problems: readonly Problem[]): PiecesReading {
  return { ok: false, problems: problems.slice(0, 24) };
}

/**
 * Reads what a clipboard holds, through the same scan, schema and rules as a sketch. Text that is not of copied pieces
 * is refused in words, with the code `not-pieces`; what is wrong inside is told by path, value and what is allowed.
 */
export function readPiecesText(text: string): PiecesReading {
  const allowed = `pieces copied from a sketch, with "trimwellCopy": ${PIECES_VERSION}`;
  if (text.length > LONGEST)
    return refused(problemAt('too-large', [], text, `a text of at most ${LONGEST} characters`));
  const parsed = parseJson(text);
  if (!parsed.ok) return refused(problemAt('not-pieces', [], text, allowed));
  const { document } = parsed;
  if (typeof document !== 'object' || document === null || !('trimwellCopy' in document))
    return refused(problemAt('not-pieces', [], document, allowed));
  const hostile = scanDocument(document);
  if (hostile) return refused(hostile);
  if (document.trimwellCopy !== PIECES_VERSION)
    return refused(problemAt('unknown-version', ['trimwellCopy'], document.trimwellCopy, allowed));
  const unit = 'unit' in document && document.unit === 'mm' ? 'mm' : 'in';
  const schema = copiedPiecesSchema(unit);
  const read = z.safeDecode(schema, document as unknown as z.input<typeof schema>);
  if (!read.success) return refused(...schemaProblems(read.error.issues, document));
  const broken = findBroken(asSketch(read.data));
  return broken.length > 0 ? refused(...broken) : { ok: true, copied: read.data };
}
