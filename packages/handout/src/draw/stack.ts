import { formatLength, inches, type LengthStyle } from '@trimwell/geometry';
import type { Sketch } from '@trimwell/sketch';
import type { Drawing, Item } from '../drawing/drawing.js';
import { labelPieces } from './labels.js';
import { looksOf } from './piece-look.js';
import { drawSlip } from './slip.js';
import { FLAT, LEAN, layoutStack, NAMES, type StackLayoutOptions, type StackSlip } from './stack-layout.js';
import { textWidth } from './text-width.js';

export interface StackOptions extends StackLayoutOptions {
  readonly style: LengthStyle;
  /** The slips alone, for a page that sets letters and names beside them itself. Default false. */
  readonly slipsOnly?: boolean;
}

/** What stands beside a slip. */
function nameOf({ piece }: StackSlip, sketch: Sketch, style: LengthStyle): string {
  if (!piece) return `Card base, ${foldNote(sketch.card.fold)}`;
  return piece.raise > 0 ? `${piece.name}, raised ${formatLength(piece.raise, style)}` : piece.name;
}

/** A line from the right edge of a slip to its letter and its name. */
function words(slip: StackSlip, letter: string, name: string, right: number, text: number, size: number): Item[] {
  const { id, rect, level } = slip;
  const key = `slip:${id}`;
  const depth = rect.y + rect.height / 2;
  const from = { x: rect.x + rect.width - depth * LEAN, y: level + depth * FLAT };
  const line = { key: `${key}:leader`, role: 'leader', piece: id, from, to: { x: right, y: text } } as const;
  const beside = (x: number) => ({ piece: id, at: { x, y: text + size * 0.35 }, size, align: 'start' as const });
  return [
    { kind: 'line', ...line },
    { kind: 'text', key: `${key}:label`, role: 'label', text: letter, ...beside(right + size * 0.4) },
    { kind: 'text', key: `${key}:name`, role: 'note', text: name, ...beside(right + size * 1.6) },
  ];
}

/**
 * The stack of one face, lifted apart and seen from the side and above: every piece as a slip of its own paper, the base at
 * the bottom. Papers are as thick as their caliper and stand on pads as high as their foam, both drawn eight times as
 * high as they are; beside each slip its letter, its name and the foam's figure.
 */
export function drawStack(sketch: Sketch, options: StackOptions): Drawing {
  const { card } = sketch;
  const { style, size = inches(1) / 5, slipsOnly = false } = options;
  const labels = labelPieces(sketch);
  const slips = layoutStack(sketch, options);
  const right = card.width + size * 1.2;
  const names = slips.map((slip) => nameOf(slip, sketch, style));
  const lines = slips.flatMap((slip, index) => {
    const text = slip.level + card.height * FLAT * 0.5;
    return words(slip, labels.get(slip.id) ?? '?', names[index] ?? '', right, text, size);
  });
  const top = (slips.at(-1)?.level ?? 0) - size;
  const left = -card.height * LEAN - size * 0.5;
  const beside = Math.max(size * NAMES, ...names.map((name) => size * 2 + textWidth(name, size)));
  const width = slipsOnly ? card.width + size * 0.5 - left : right + beside - left;
  const foot = card.height * FLAT + (slips[0]?.thick ?? 0) + size * 1.5;
  return {
    title: 'The stack',
    description: `Gluing order, lowest first: ${slips.map(({ piece }) => piece?.name ?? 'Card base').join(', ')}.`,
    box: { x: left, y: top, width, height: foot - top },
    items: [...slips.map((slip) => drawSlip(slip, size)), ...(slipsOnly ? [] : lines)],
    looks: looksOf(sketch),
  };
}

function foldNote(fold: Sketch['card']['fold']): string {
  if (fold === 'none') return 'flat';
  return fold === 'left' ? 'folds at the left' : 'folds at the top';
}
