import { checkPlan, eachLeaf, inches, planCuts, rectangle, type SheetLayout } from '@trimwell/geometry';
import { applyEdit, batchRecipe, planBatch, type Sketch } from '@trimwell/sketch';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { randomJob } from '../../../../tests/kit/random-job.js';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import type { Drawing, Item } from '../drawing/drawing.js';
import { drawCard } from './card.js';
import { placedBox, placeLabel } from './label-placement.js';
import { labelAt, labelPieces } from './labels.js';
import { pieceTable } from './piece-table.js';
import { drawSheet } from './sheet.js';
import { drawStack } from './stack.js';
import { textWidth } from './text-width.js';

const sketch = sampleSketch();
const style = { unit: 'in' } as const;

function flat(items: readonly Item[]): readonly Item[] {
  return items.flatMap((item) => (item.kind === 'group' ? [item, ...flat(item.items)] : [item]));
}

function numbersIn(value: unknown): readonly number[] {
  if (typeof value === 'number') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersIn) : [];
}

/** What holds for every drawing: finite numbers, keys used once, every paper that fills something has its look. */
function expectDrawing(drawing: Drawing): Drawing {
  const items = flat(drawing.items);
  expect(numbersIn(drawing).every(Number.isFinite)).toBe(true);
  expect(new Set(items.map((item) => item.key)).size).toBe(items.length);
  const filled = items.flatMap((item) => (item.kind === 'path' && item.fill ? [item.fill.paper] : []));
  expect(filled.filter((paper) => !drawing.looks[paper])).toEqual([]);
  expect(drawing.title).not.toBe('');
  return drawing;
}

function sheetsOf(from: Sketch, cards: number) {
  const labels = labelPieces(from);
  return planBatch(batchRecipe(from), cards).papers.flatMap(({ paper, plan }) => {
    const found = from.papers.find((candidate) => candidate.id === paper);
    if (!found) throw new Error(`no paper ${paper}`);
    return plan.sheets.map((layout) => ({
      layout,
      drawing: expectDrawing(drawSheet(layout, found, { style, labels, size: inches(1 / 4), kerf: 0 })),
    }));
  });
}

test('letters go on after Z', () => {
  expect([0, 1, 25, 26, 27, 51, 52, 701, 702].map(labelAt)).toEqual([
    'A',
    'B',
    'Z',
    'AA',
    'AB',
    'AZ',
    'BA',
    'ZZ',
    'AAA',
  ]);
});

test('the face shows each of its pieces once, lowest first, at its place and tilt', () => {
  const drawing = expectDrawing(drawCard(sketch, { face: 'front', style, labels: true }));
  const groups = drawing.items.flatMap((item) => (item.kind === 'group' ? [item] : []));
  expect(groups.map((group) => group.piece)).toEqual(['panel-mat', 'panel', 'strip', 'greeting']);
  const greeting = sketch.pieces[3];
  if (!greeting) throw new Error('the sample has a greeting');
  expect(groups[3]).toMatchObject({
    turn: -6,
    move: { x: greeting.x + greeting.width / 2, y: greeting.y + greeting.height / 2 },
  });
});

test('moving a piece changes nothing in the drawing but where its group lands', () => {
  const before = drawCard(sketch, { face: 'front', style });
  const after = drawCard(applyEdit(sketch, { do: 'place', piece: 'strip', x: inches(1), y: inches(1) }), {
    face: 'front',
    style,
  });
  const changed = after.items.filter((item, index) => JSON.stringify(item) !== JSON.stringify(before.items[index]));
  expect(changed.map((item) => item.key)).toEqual(['piece:strip']);
  const [group] = changed;
  if (group?.kind !== 'group') throw new Error('a piece is a group');
  expect(group).toMatchObject({ move: { x: inches(1) + inches(3.75) / 2, y: inches(1.5) } });
});

test('the inside shows the inside, the stack shows base and pieces of its face', () => {
  const inside = expectDrawing(drawCard(sketch, { face: 'inside', style }));
  expect(inside.items.filter((item) => item.kind === 'group').map((item) => item.piece)).toEqual(['liner']);
  const stack = expectDrawing(drawStack(sketch, { face: 'front', style }));
  const names = stack.items.flatMap((item) => (item.kind === 'text' && item.role === 'note' ? [item.text] : []));
  expect(names).toEqual(['Card base, folds at the left', 'Panel mat', 'Panel', 'Strip', 'Greeting, raised 1⁄16 in']);
});

test('a sheet shows every blank of its plan at its place, with the letter that the face and the table have', () => {
  const labels = labelPieces(sketch);
  for (const { layout, drawing } of sheetsOf(sketch, 6)) {
    const boxes: string[] = [];
    eachLeaf(layout.tree, layout.usable, inches(0), (leaf, { x, y, width, height }) => {
      if (leaf.is === 'blank') boxes.push(JSON.stringify(rectangle(x, y, width, height)));
    });
    const drawn = drawing.items.flatMap((item) =>
      item.kind === 'path' && item.role === 'blank' ? [JSON.stringify(item.outline)] : [],
    );
    expect(drawn).toEqual(boxes);
    const letters = drawing.items.flatMap((item) =>
      item.kind === 'text' && item.role === 'label' && item.piece ? [[item.piece, item.text.slice(0, 1)]] : [],
    );
    for (const [piece, letter] of letters) expect(letter).toBe(labels.get(piece ?? ''));
  }
  expect(pieceTable(sketch, 6).map(({ id, label }) => [id, label])).toEqual([...labels]);
});

test('labels lie inside their blank and never on each other, on the sheets of random plans', () => {
  const paper = sketch.papers[1];
  if (!paper) throw new Error('the sample has papers');
  const labels = new Map(Array.from({ length: 9 }, (_, index) => [`b${index}`, labelAt(index)]));
  fc.assert(
    fc.property(randomJob(), fc.integer({ min: 20, max: 200 }), (job, size) => {
      const plan = planCuts(job, { work: 500 });
      expect(checkPlan(job, plan)).toEqual([]);
      for (const layout of plan.sheets as readonly SheetLayout[]) {
        const drawing = drawSheet(layout, paper, { style, labels, size, kerf: job.trimmer.kerf });
        const boxes = drawing.items.flatMap((item) =>
          item.kind === 'text'
            ? [placedBox({ text: item.text, at: item.at, size: item.size, turn: item.turn === -90 ? -90 : 0 })]
            : [],
        );
        const collisions = boxes.filter((a, index) =>
          boxes
            .slice(index + 1)
            .some((b) => a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height),
        );
        expect(collisions).toEqual([]);
        const outside = boxes.filter(
          (box) => box.x < 0 || box.y < 0 || box.x + box.width > layout.width || box.y + box.height > layout.height,
        );
        expect(outside).toEqual([]);
      }
    }),
    { numRuns: 300 },
  );
});

test('a part too small for its figure keeps its letter, and one too small for that has none', () => {
  const label = { letter: 'C', figure: '3 3⁄4 × 5' };
  const box = (width: number, height: number) => ({ x: 0, y: 0, width, height });
  expect(placeLabel(label, box(1000, 1000), 100).map(({ text }) => text)).toEqual(['C', '3 3⁄4 × 5']);
  expect(placeLabel(label, box(900, 130), 100).map(({ text }) => text)).toEqual(['C  3 3⁄4 × 5']);
  expect(placeLabel(label, box(130, 900), 100)[0]).toMatchObject({ text: 'C  3 3⁄4 × 5', turn: -90 });
  expect(placeLabel(label, box(140, 140), 100)).toMatchObject([{ text: 'C', size: 100 }]);
  expect(placeLabel(label, box(10, 10), 100)).toEqual([]);
  expect(textWidth('W', 100)).toBeGreaterThan(textWidth('i', 100));
});

test('the piece table gives finished sizes, blanks with the bite, and numbers for one card and for the batch', () => {
  const strip = pieceTable(sketch, 6).find(({ id }) => id === 'strip');
  expect(strip).toMatchObject({
    label: 'D',
    paper: 'Prints',
    height: inches(1),
    blankHeight: inches(1.125),
    perCard: 1,
    quantity: 6,
  });
  expect(pieceTable(sketch, 6)[0]).toMatchObject({
    label: 'A',
    width: inches(4.25),
    blankWidth: inches(8.5),
    quantity: 6,
  });
});

test('names of the stack stay inside its box, however long, and slips show the papers of the face', () => {
  const [first] = sketch.pieces;
  if (!first) throw new Error('the sample has pieces');
  const long = applyEdit(sketch, { do: 'alter-piece', piece: first.id, name: 'W'.repeat(80), raise: inches(1 / 16) });
  const { box, items } = expectDrawing(drawStack(long, { face: 'front', style }));
  const beyond = items.filter(
    (item) => item.kind === 'text' && item.at.x + textWidth(item.text, item.size) > box.x + box.width,
  );
  expect(beyond).toEqual([]);
  const papers = (drawing: Drawing): readonly string[] =>
    flat(drawing.items).flatMap((item) =>
      item.kind === 'path' && item.role === 'outline' && item.fill ? [item.fill.paper] : [],
    );
  const front = sketch.pieces.filter((piece) => piece.face === 'front').map((piece) => piece.id);
  const mixed = {
    ...sketch,
    pieces: sketch.pieces.map((piece) => (piece.kind === 'mat' ? piece : { ...piece, from: 'prints' })),
  };
  expect(papers(drawCard(mixed, { face: 'front', style }))).toHaveLength(front.length + 1);
  expect(new Set(papers(drawCard(mixed, { face: 'front', style }))).size).toBe(4);
  expect(papers(drawStack(mixed, { face: 'front', style }))).toEqual(papers(drawCard(mixed, { face: 'front', style })));
});

test('stopped cuts are drawn: four 5 x 7 in blanks turned around a centre of a 12 x 12 in sheet, either hand', () => {
  const [paper] = sketch.papers;
  if (!paper) throw new Error('the sample has papers');
  const blank = (turned: boolean) => ({ is: 'blank', blank: 'panel', turned }) as const;
  for (const hand of ['clockwise', 'counterclockwise'] as const) {
    const tree: SheetLayout['tree'] = {
      is: 'pinwheel',
      hand,
      x1: inches(5),
      x2: inches(7),
      y1: inches(5),
      y2: inches(7),
      top: blank(true),
      right: blank(false),
      bottom: blank(true),
      left: blank(false),
      centre: { is: 'offcut' },
    };
    const usable = { x: inches(0), y: inches(0), width: inches(12), height: inches(12) };
    const layout: SheetLayout = { paper: paper.id, width: inches(12), height: inches(12), usable, copies: 1, tree };
    const drawing = expectDrawing(
      drawSheet(layout, paper, { style, labels: labelPieces(sketch), size: inches(1 / 4), kerf: 0 }),
    );
    const lengths = drawing.items.flatMap((item) =>
      item.kind === 'line' && item.role === 'cut'
        ? [Math.hypot(item.to.x - item.from.x, item.to.y - item.from.y) / inches(1)]
        : [],
    );
    expect(lengths).toEqual([7, 7, 7, 7]);
    // Each begins at an edge of the sheet and stops inside it.
    const cuts = drawing.items.flatMap((item) => (item.kind === 'line' && item.role === 'cut' ? [item] : []));
    const starts = cuts.map(({ from: { x, y } }) => x === 0 || y === 0 || x === inches(12) || y === inches(12));
    expect(starts).toEqual([true, true, true, true]);
  }
});

test('words stay on their piece, and short of the tail of a banner', () => {
  const [, , , greeting] = sketch.pieces;
  if (!greeting) throw new Error('the sample has a greeting');
  for (const words of ['hi', 'with love', 'W'.repeat(60)]) {
    const worded = { ...greeting, shape: 'banner', art: { motif: 'words', words, ink: '#000000' } } as const;
    const drawing = drawCard({ ...sketch, pieces: [worded] }, { face: 'front', style });
    const text = flat(drawing.items).find((item) => item.kind === 'text' && item.role === 'art');
    if (text?.kind !== 'text') throw new Error('the words are drawn');
    const half = textWidth(words, text.size) / 2;
    expect(text.at.x - half).toBeGreaterThan(0);
    expect(text.at.x + half).toBeLessThan(greeting.width - Math.min(greeting.height / 2, greeting.width / 3));
  }
});

test('letters on the face are never on each other, even where many pieces share a corner', () => {
  const [first] = sketch.pieces;
  if (!first) throw new Error('the sample has pieces');
  const pieces = Array.from({ length: 12 }, (_, index) => ({ ...first, id: `p${index}` }));
  const drawing = drawCard(
    { ...sketch, pieces: pieces.map(({ mats: _, ...piece }) => piece) },
    { face: 'front', style, labels: true },
  );
  const boxes = drawing.items.flatMap((item) =>
    item.kind === 'text' && item.role === 'label'
      ? [{ x: item.at.x, y: item.at.y, right: item.at.x + textWidth(item.text, item.size), size: item.size }]
      : [],
  );
  expect(boxes).toHaveLength(12);
  const collisions = boxes.filter((a, index) =>
    boxes.slice(index + 1).some((b) => a.x < b.right && b.x < a.right && Math.abs(a.y - b.y) < a.size),
  );
  expect(collisions).toEqual([]);
});
