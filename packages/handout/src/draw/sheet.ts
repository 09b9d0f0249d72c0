import {
  eachNode,
  formatSize,
  type LengthStyle,
  type PinwheelNode,
  type Point,
  type Rect,
  rectangle,
  type SheetLayout,
} from '@trimwell/geometry';
import { type Paper, pieceOfBlank } from '@trimwell/sketch';
import type { Drawing, Item } from '../drawing/drawing.js';
import { type FarPart, type PlacedText, placedBox, placeFarLabels, placeLabel, placeNote } from './label-placement.js';
import { labelOfBlank } from './labels.js';
import { sheetLook } from './piece-look.js';

export interface SheetOptions {
  readonly style: LengthStyle;
  /** Letters of the pieces, from `labelPieces`. */
  readonly labels: ReadonlyMap<string, string>;
  /** Wanted height of letters and figures, in ticks: what is readable at the size the sheet is shown. */
  readonly size: number;
  /** The trimmer's kerf, in ticks. */
  readonly kerf: number;
  /** The smallest share of `size` that a letter may have before its label goes outside, behind a leader. Default 0.3. */
  readonly least?: number;
  /** What an offcut is called, null for one that is not worth a name; by default each says its size. */
  readonly offcutName?: (box: Rect) => string | null;
}

function texts(
  placed: readonly PlacedText[],
  key: string,
  role: 'label' | 'figure' | 'note',
  piece?: string,
): readonly Item[] {
  return placed.map(
    ({ text, at, size, turn }, index): Item => ({
      kind: 'text',
      key: `${key}:text${index}`,
      role: index === 0 && role === 'figure' ? 'label' : role,
      at,
      text,
      size,
      align: 'middle',
      turn,
      ...(piece === undefined ? {} : { piece }),
    }),
  );
}

function boxOutline({ x, y, width, height }: Rect) {
  return rectangle(x, y, width, height);
}

/** The four cuts of a pinwheel, each from an edge of `box` to where it stops; the last ones stop at the first ones. */
function stoppedCuts({ hand, x1, x2, y1, y2 }: PinwheelNode, box: Rect): readonly (readonly [Point, Point])[] {
  const { width: w, height: h } = box;
  const at = (x: number, y: number): Point => ({ x: box.x + (hand === 'clockwise' ? x : w - x), y: box.y + y });
  return [
    [at(0, y1), at(x2, y1)],
    [at(x2, 0), at(x2, y2)],
    [at(w, y2), at(x1, y2)],
    [at(x1, h), at(x1, y1)],
  ];
}

/** The size of an offcut, or its name with its size where offcuts have names. */
function offcutWords(box: Rect, { style, size, offcutName }: SheetOptions): readonly PlacedText[] {
  const figure = formatSize(box, { ...style, bare: true });
  if (!offcutName) return placeNote(figure, box, size * 0.85);
  const letter = offcutName(box);
  return letter === null ? [] : placeLabel({ letter, figure }, box, size * 0.85);
}

/** A cutting guide of one sheet layout in true proportion: the sheet, its blanks with letter and size, cuts, offcuts. */
export function drawSheet(layout: SheetLayout, paper: Paper, options: SheetOptions): Drawing {
  const { style, labels, size } = options;
  const sheet = rectangle(0, 0, layout.width, layout.height);
  const items: Item[] = [
    { kind: 'path', key: 'sheet:shadow', role: 'shadow', outline: sheet },
    { kind: 'path', key: 'sheet:paper', role: 'sheet', outline: sheet, fill: { paper: paper.id } },
  ];
  const marks: Item[] = [];
  const words: Item[] = [];
  const far: FarPart[] = [];
  const taken: ReturnType<typeof placedBox>[] = [];
  const { usable } = layout;
  if (usable.width < layout.width || usable.height < layout.height) {
    items.push({ kind: 'path', key: 'sheet:margin', role: 'margin', outline: boxOutline(usable) });
  }
  let blanks = 0;
  let part = 0;
  eachNode(layout.tree, usable, options.kerf as Rect['x'], (node, box) => {
    const key = `part${part}`;
    part += 1;
    if (box.width <= 0 || box.height <= 0) return;
    if (node.is === 'blank') {
      blanks += 1;
      const piece = pieceOfBlank(node.blank);
      items.push({ kind: 'path', key, role: 'blank', piece, outline: boxOutline(box) });
      const label = { letter: labelOfBlank(labels, node.blank), figure: formatSize(box, { ...style, bare: true }) };
      const placed = placeLabel(label, box, size, options.least);
      words.push(...texts(placed, key, 'figure', piece));
      taken.push(...placed.map(placedBox));
      if (placed.length === 0) far.push({ key, text: `${label.letter}  ${label.figure}`, box });
    } else if (node.is === 'offcut') {
      items.push({ kind: 'path', key, role: 'offcut', outline: boxOutline(box) });
      const placed = offcutWords(box, options);
      words.push(...texts(placed, key, options.offcutName ? 'label' : 'note'));
      taken.push(...placed.map(placedBox));
    } else if (node.is === 'cut') {
      const across = node.direction === 'vertical';
      const from = across ? { x: box.x + node.at, y: box.y } : { x: box.x, y: box.y + node.at };
      const to = across ? { x: box.x + node.at, y: box.y + box.height } : { x: box.x + box.width, y: box.y + node.at };
      marks.push({ kind: 'line', key, role: 'cut', from, to });
    } else {
      stoppedCuts(node, box).forEach(([from, to], index) => {
        marks.push({ kind: 'line', key: `${key}:stopped${index}`, role: 'cut', from, to });
      });
    }
  });
  const outside = placeFarLabels(far, { x: 0, y: 0, width: layout.width, height: layout.height }, size * 0.85, taken);
  for (const { key, text, from, to } of outside) {
    marks.push({ kind: 'line', key: `${key}:leader`, role: 'leader', from, to });
    words.push(...texts([text], key, 'figure'));
  }
  const reach = outside.map(({ text }) => placedBox(text));
  const edge = size * 0.5;
  const right = Math.max(layout.width, ...reach.map((box) => box.x + box.width));
  const bottom = Math.max(layout.height, ...reach.map((box) => box.y + box.height));
  const copies = layout.copies === 1 ? '1 sheet' : `${layout.copies} sheets, cut alike`;
  return {
    title: `${paper.name}, ${copies}`,
    description: `Cutting guide of ${paper.name}, ${formatSize(layout, style)}: ${blanks} blanks.`,
    box: { x: -edge, y: -edge, width: right + 2 * edge, height: bottom + 2 * edge },
    items: [...items, ...marks, ...words],
    looks: { [paper.id]: sheetLook(paper) },
  };
}

/** A sheet that nothing is cut from. */
export function drawPlainSheet(paper: Paper, size: number): Drawing {
  const outline = rectangle(0, 0, paper.width, paper.height);
  const edge = size * 0.5;
  return {
    title: paper.name,
    description: `A sheet of ${paper.name}; nothing is cut from it.`,
    box: { x: -edge, y: -edge, width: paper.width + 2 * edge, height: paper.height + 2 * edge },
    items: [
      { kind: 'path', key: 'sheet:shadow', role: 'shadow', outline },
      { kind: 'path', key: 'sheet:paper', role: 'sheet', outline, fill: { paper: paper.id } },
    ],
    looks: { [paper.id]: sheetLook(paper) },
  };
}
