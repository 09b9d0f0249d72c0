import { rectangle } from '@trimwell/geometry';
import { type Drawing, drawCard, sheetLook } from '@trimwell/handout';
import type { Paper, Sketch } from '@trimwell/sketch';

/** A rectangle of a paper, `width` x `height` ticks, from the top left of its sheet. */
export function drawSwatch(paper: Paper, width: number, height: number): Drawing {
  const outline = rectangle(0, 0, width, height);
  return {
    title: paper.name,
    description: `A piece of ${paper.name}.`,
    box: { x: 0, y: 0, width, height },
    items: [{ kind: 'path', key: 'swatch', role: 'paper', outline, fill: { paper: paper.id } }],
    looks: { [paper.id]: sheetLook(paper) },
  };
}

/** One end of a side of length `size` about `middle`, kept between 0 and `most` where it fits. */
function startAbout(middle: number, size: number, most: number): number {
  if (size >= most) return (most - size) / 2;
  return Math.max(0, Math.min(most - size, middle - size / 2));
}

/** `items` without what lies under the pieces: at true size depth would only blur the paper. */
function withoutShadows(items: Drawing['items']): Drawing['items'] {
  return items
    .filter(({ role }) => role !== 'shadow')
    .map((item) => (item.kind === 'group' ? { ...item, items: withoutShadows(item.items) } : item));
}

/** `sketch` with every piece of a mix that `paper` takes turns in cut from it, as on the cards where it has its turn. */
function inItsTurn(sketch: Sketch, paper: string): Sketch {
  const mixes = new Set(sketch.mixes.filter(({ papers }) => papers.includes(paper)).map(({ id }) => id));
  const pieces = sketch.pieces.map((piece) => (mixes.has(piece.from) ? { ...piece, from: paper } : piece));
  return { ...sketch, pieces };
}

/**
 * Part of the card, `width` x `height` ticks: about the topmost piece of `paper`, on the front if there is one, or about the
 * middle of the card.
 */
export function drawCardPart(sketch: Sketch, paper: string, width: number, height: number): Drawing {
  const shown = inItsTurn(sketch, paper);
  const mine = shown.pieces.filter(({ from }) => from === paper);
  const piece = mine.findLast(({ face }) => face === 'front') ?? mine.at(-1);
  const { card } = sketch;
  const middle = piece
    ? { x: piece.x + piece.width / 2, y: piece.y + piece.height / 2 }
    : { x: card.width / 2, y: card.height / 2 };
  const drawing = drawCard(shown, { face: piece?.face ?? 'front', style: { unit: sketch.unit }, dimensions: false });
  const x = startAbout(middle.x, width, card.width);
  const y = startAbout(middle.y, height, card.height);
  return { ...drawing, items: withoutShadows(drawing.items), box: { x, y, width, height } };
}
