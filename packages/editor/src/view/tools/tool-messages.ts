import { formatLength, type Length, repeatsAlong, ticks, type Unit } from '@trimwell/geometry';
import type { Corners, Edge, Piece, Punch, Sketch } from '@trimwell/sketch';
import { sideOf } from '../../state/tool-commands.js';

/** Every sentence about corner rounders and border punches. */

/** How to call a corner. */
export const CORNER_NAMES: Readonly<Record<keyof Corners, string>> = {
  tl: 'top left',
  tr: 'top right',
  br: 'bottom right',
  bl: 'bottom left',
};

export function radiusText(radius: Length, unit: Unit): string {
  return radius === 0 ? 'square' : formatLength(radius, { unit });
}

/** A quiet word on radii that no rounder of the designer's makes; empty when all do, or when none were named. */
export function noRounderText(corners: Corners, owned: readonly Length[], unit: Unit): string {
  if (owned.length === 0) return '';
  const others = [...new Set(Object.values(corners))].filter((radius) => radius > 0 && !owned.includes(radius));
  if (others.length === 0) return '';
  const radii = others.map((radius) => formatLength(radius, { unit })).join(' and ');
  return `No rounder of yours makes ${radii}: cut by hand along a round template, or by machine.`;
}

/** What a concentric mat cannot be rounded by. */
export function withinRevealText(reveal: Length, unit: Unit): string {
  return `This mat is concentric: square, or more than its reveal of ${formatLength(reveal, { unit })}.`;
}

/** How the repeats of a punch come out on an edge. */
export function repeatsText(piece: Piece, edge: Edge, punch: Punch, unit: Unit): string {
  const length = piece[sideOf(edge)];
  const { whole, rest } = repeatsAlong(length, punch);
  const repeats = `${whole} ${whole === 1 ? 'repeat' : 'repeats'}`;
  if (rest === 0) return `${repeats}, ending whole at both corners.`;
  return `${repeats} about the middle, and ${formatLength(ticks(Math.round(rest)), { unit })} of one at both ends.`;
}

/** On the button that makes a side hold whole repeats. */
export function fitText(side: 'width' | 'height', length: Length, unit: Unit): string {
  return `Make it ${formatLength(length, { unit })} ${side === 'width' ? 'wide' : 'high'}`;
}

/** Sizes of a punch in one line. */
export function punchText({ repeat, depth, bite }: Omit<Punch, 'id'>, unit: Unit): string {
  const bare = { unit, bare: true } as const;
  return `repeat ${formatLength(repeat, bare)} · depth ${formatLength(depth, bare)} · bite ${formatLength(bite, { unit })}`;
}

/** How far one repeat goes, for a list of many. */
export function repeatText({ repeat }: Pick<Punch, 'repeat'>, unit: Unit): string {
  return `repeat ${formatLength(repeat, { unit })}`;
}

/** The edges that a punch is used on, as words. */
export function usesText(uses: readonly { readonly piece: Piece; readonly edge: Edge }[]): string {
  if (uses.length === 0) return 'on no edge yet';
  const pieces = [...new Set(uses.map(({ piece }) => piece))];
  const words = pieces.map((piece) => {
    const edges = uses.filter((use) => use.piece === piece).map(({ edge }) => edge);
    const all = edges.length === 4 ? 'all round' : edges.join(' and ');
    return `${all}${edges.length === 4 ? '' : ' of'} ${piece.name}`;
  });
  return `used ${words.join(', ')}`;
}

/** Asked before a punch that is in use is taken away. */
export function takeAwayText(punch: Punch, uses: readonly { readonly piece: Piece; readonly edge: Edge }[]): string {
  const edges = uses.length === 1 ? 'edge becomes' : 'edges become';
  return `${punch.name} is ${usesText(uses)}. Without it ${uses.length === 1 ? 'that' : 'those'} ${edges} plain.`;
}

export const toolMessages = {
  concentric: (inner: string) => `concentric with ${inner}`,
  roundWithin: (under: string) => `Round to suit ${under}`,
  edgeOf: (edge: Edge, piece: Piece) => `${edge[0]?.toUpperCase()}${edge.slice(1)} edge of ${piece.name}`,
  edgeMark: (edge: Edge, punch: Punch | null) => `${edge} edge: ${punch?.name ?? 'plain'}. Choose a punch`,
  radiusFigure: (radius: Length, unit: Sketch['unit'], note: 'owned' | 'concentric' | null) =>
    `${radiusText(radius, unit)}${note === 'owned' ? ', your rounder' : note === 'concentric' ? ', concentric' : ''}`,
  caution:
    'Punches and rounders bite: keep the fingers clear of the slot, press on a firm table, and empty the scraps often.',
  notKept: (why: string | null) =>
    `These tools are kept only while this page is open${why === null ? '' : ` (${why})`}.`,
} as const;
