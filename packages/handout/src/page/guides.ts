import { eachLeaf, type Length, type Point, quarterTurn, type SheetLayout } from '@trimwell/geometry';
import { centreOf, type Paper, type PaperPlan, pieceOfBlank } from '@trimwell/sketch';
import { drawDimension } from '../draw/dimension.js';
import { drawSheet } from '../draw/sheet.js';
import type { Drawing } from '../drawing/drawing.js';
import { type Atom, blockAt, stackBlocks, stackHeight } from './atom.js';
import { called, frameWidth, type HandoutContext } from './context.js';
import { localiseItems } from './localise.js';
import { type NamedOffcuts, namedOffcuts } from './offcuts.js';
import type { Pager } from './pager.js';
import { scaledGroup, scaledLooks } from './scaled-drawing.js';
import { POINT } from './sheet-of-paper.js';
import { listAtoms } from './supplies.js';
import { headingAtom, textAtom } from './text-atoms.js';
import { STYLES } from './text-style.js';

/** Letters on a guide, as they are printed, and the smallest share of that for a letter on its part. */
const LABEL = 8 * POINT;
const LEAST = 0.65;
const DIMENSION = 7.5 * POINT;
const BELOW = 17 * POINT;
const BESIDE = 15 * POINT;
/** Room for the end of a dimension line that reaches beyond the sheet's edge. */
const ABOVE = 4 * POINT;
/** The share of the width and of the height that a guide may take, and the largest scale that small sheets are drawn at. */
const WIDTH_SHARE = 0.6;
const HEIGHT_SHARE = 0.445;
const LARGEST = 0.5;
/** Guides begin on a new page unless so much of the last one is empty. */
const NEW_PAGE = 0.52;

interface Guide {
  readonly layout: SheetLayout;
  readonly paper: Paper;
  /** Of all layouts of the handout, from 1. */
  readonly number: number;
  readonly kerf: Length;
  readonly offcuts: readonly NamedOffcuts[];
  readonly nameOf: ReturnType<typeof namedOffcuts>['nameOf'];
}

/** How a layout's sheet is called: its paper, or the centre of a piece that it is. */
function sheetName({ layout, paper }: Guide, context: HandoutContext): string {
  const centre = centreOf(layout.paper);
  return centre === null ? paper.name : `${paper.name}, ${context.speech.say.centreOf(called(context, centre))}`;
}

/** The blanks of one sheet, counted, by piece in the order in which they lie. */
function blankTexts({ layout, kerf }: Guide, context: HandoutContext): readonly string[] {
  const { speech } = context;
  const found = new Map<string, number>();
  eachLeaf(layout.tree, layout.usable, kerf, (leaf, box) => {
    if (leaf.is !== 'blank') return;
    // As the piece is named everywhere else, however it lies here.
    const size = leaf.turned ? quarterTurn(box) : box;
    const text = `${called(context, pieceOfBlank(leaf.blank))}, ${speech.size(size)}`;
    found.set(text, (found.get(text) ?? 0) + 1);
  });
  return [...found].map(([text, count]) => speech.say.perSheet(count, text));
}

function drawnAt(guide: Guide, scale: number, context: HandoutContext): Drawing {
  const { speech, labels } = context;
  const { layout, paper, kerf, nameOf } = guide;
  const style = { unit: speech.unit };
  return drawSheet(layout, paper, { style, labels, size: LABEL / scale, kerf, least: LEAST, offcutName: nameOf });
}

interface GuideFigure {
  readonly atom: Atom;
  readonly width: number;
  readonly looks: Drawing['looks'];
}

/** The guide to scale with the dimensions of its sheet; labels that stand outside make the sheet smaller, not the figure wider. */
function guideFigure(
  guide: Guide,
  room: { readonly width: number; readonly height: number },
  context: HandoutContext,
): GuideFigure {
  const { speech } = context;
  const { layout } = guide;
  const fits = (beside: number): number =>
    Math.min(LARGEST, (room.width - BESIDE - beside) / layout.width, (room.height - ABOVE - BELOW) / layout.height);
  const outside = (drawing: Drawing, at: number): number =>
    Math.max(0, drawing.box.width + drawing.box.x - layout.width) * at;
  let scale = fits(LABEL);
  let drawing = drawnAt(guide, scale, context);
  // A smaller sheet may send more labels outside, which make it smaller again; each round has more of them, so it ends.
  for (let room = fits(outside(drawing, scale)); room < scale; room = fits(outside(drawing, scale))) {
    scale = room;
    drawing = drawnAt(guide, scale, context);
  }
  const size = DIMENSION / scale;
  const style = { unit: speech.unit, bare: true };
  const tall = Math.max(layout.height, drawing.box.y + drawing.box.height - LABEL / scale);
  const items = [
    ...drawing.items,
    ...drawDimension({
      key: 'width',
      along: 'x',
      from: 0,
      length: layout.width,
      at: layout.height + 1.75 * size,
      edge: layout.height,
      size,
      style,
    }),
    ...drawDimension({
      key: 'height',
      along: 'y',
      from: 0,
      length: layout.height,
      at: -0.9 * size,
      edge: 0,
      size,
      style,
    }),
  ];
  const height = Math.ceil(ABOVE + Math.max(layout.height * scale + BELOW, tall * scale + LABEL));
  const alt = speech.say.layoutAlt(
    sheetName(guide, context),
    speech.size(layout),
    blankTexts(guide, context).join('; '),
  );
  const draw = (at: Point) => [
    blockAt(
      'Figure',
      { x: at.x, y: at.y, width: room.width, height },
      [
        scaledGroup(
          localiseItems(items, speech),
          scale,
          { x: at.x + BESIDE, y: at.y + ABOVE },
          `guide:${guide.number}`,
        ),
      ],
      { alt },
    ),
  ];
  return { atom: { height, before: 12 * POINT, draw }, width: room.width, looks: scaledLooks(drawing.looks, scale) };
}

function wordsOf(guide: Guide, width: number, context: HandoutContext): readonly Atom[] {
  const { speech, measure } = context;
  const { say } = speech;
  const { layout, number, offcuts } = guide;
  const title = say.layout(number, sheetName(guide, context));
  const blanks = blankTexts(guide, context);
  const left = offcuts.map(({ names, width: w, height: h, use }) => {
    const size = speech.size({ width: w, height: h });
    const called = names.length === 1 ? say.offcut(names[0] ?? '', size) : say.offcutTimes(names.join(', '), size);
    return [
      { text: called, style: STYLES.body },
      { text: use, style: STYLES.small },
    ];
  });
  const small = (text: string): Atom => textAtom(text, STYLES.head, width, measure, { before: 6 * POINT, stays: true });
  return [
    headingAtom(title, 3, width, measure, { mark: { title, level: 2 } }),
    textAtom(`${speech.size(layout)}, ${say.copies(layout.copies)}`, STYLES.strong, width, measure, {
      before: 1 * POINT,
    }),
    small(say.heads.fromIt),
    ...(blanks.length === 0
      ? [textAtom(say.nothingCut, STYLES.body, width, measure)]
      : listAtoms(
          blanks.map((text) => [{ text, style: STYLES.body }]),
          width,
          context,
        )),
    small(say.heads.leftOver),
    ...(left.length === 0 ? [textAtom(say.nothingLeft, STYLES.body, width, measure)] : listAtoms(left, width, context)),
  ];
}

/** Figure and words beside each other, or under each other where the words are longer than a page takes beside it. */
function guideAtoms(
  guide: Guide,
  context: HandoutContext,
): { readonly atoms: readonly Atom[]; readonly looks: Drawing['looks'] } {
  const { frame } = context;
  const width = frameWidth(context);
  const tall = frame.bottom - frame.top;
  const gap = 16 * POINT;
  const figureWidth = Math.round(width * WIDTH_SHARE);
  const { atom, looks } = guideFigure(guide, { width: figureWidth, height: Math.round(tall * HEIGHT_SHARE) }, context);
  const beside = width - figureWidth - gap;
  const words = wordsOf(guide, beside, context);
  const wordsHeight = stackHeight(words);
  const mark = words[0]?.mark;
  if (Math.max(wordsHeight, atom.height) > tall * 0.8) {
    const [title, ...rest] = wordsOf(guide, width, context);
    return { atoms: title ? [title, { ...atom, before: 4 * POINT }, ...rest] : [atom], looks };
  }
  const draw = (at: Point) => [...atom.draw(at), ...stackBlocks(words, { x: at.x + figureWidth + gap, y: at.y })];
  const both: Atom = {
    height: Math.ceil(Math.max(atom.height, wordsHeight)),
    before: 14 * POINT,
    draw,
    ...(mark ? { mark } : {}),
  };
  return { atoms: [both], looks };
}

/** The layouts of a plan as guides, numbered on from `number`, their offcuts from `first`. */
function guidesOf(
  { paper: id, job, plan }: PaperPlan,
  from: { number: number; first: number },
  context: HandoutContext,
): readonly Guide[] {
  const paper = context.sketch.papers.find((each) => each.id === id);
  if (!paper) return [];
  const { kerf } = job.trimmer;
  return plan.sheets.map((layout) => {
    const { offcuts, nameOf, count } = namedOffcuts(layout, paper, { kerf, first: from.first }, context);
    const guide = { layout, paper, number: from.number, kerf, offcuts, nameOf };
    from.number += 1;
    from.first += count;
    return guide;
  });
}

/** The cutting guide of every layout, and the looks that they are drawn with. */
export function setGuides(pager: Pager, context: HandoutContext): readonly Drawing['looks'][] {
  const { batch, frame, speech, measure } = context;
  const from = { number: 1, first: 1 };
  const guides = batch.papers
    .flatMap((paper) => guidesOf(paper, from, context))
    .map((guide) => guideAtoms(guide, context));
  if (guides.length === 0) return [];
  const title = speech.say.heads.guides;
  if (pager.room < NEW_PAGE * (frame.bottom - frame.top)) pager.breakPage();
  const head = headingAtom(title, 2, frameWidth(context), measure, { mark: { title, level: 1 } });
  pager.set({ x: frame.left, atoms: [head, ...guides.flatMap(({ atoms }) => atoms)] });
  return guides.map(({ looks }) => looks);
}
