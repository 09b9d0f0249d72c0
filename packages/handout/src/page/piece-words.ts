import type { Corners, Edge, Piece, Sketch } from '@trimwell/sketch';
import { EDGES } from '@trimwell/sketch';
import type { Speech } from './speech.js';

export const CORNERS = ['tl', 'tr', 'br', 'bl'] as const;

/** Each rounded corner of a piece with its radius. */
export function roundedCorners(corners: Corners, { say, length }: Speech): readonly string[] {
  const rounded = CORNERS.filter((corner) => corners[corner] > 0);
  return rounded.map((corner) => say.cornerRadius(say.corner[corner], length(corners[corner])));
}

/** The corners of a piece in words: all of one radius in short, else each rounded one; empty for square corners. */
export function cornersText(corners: Corners, speech: Speech): string {
  const { say, length, list } = speech;
  const rounded = roundedCorners(corners, speech);
  if (rounded.length === 0) return '';
  return isEven(corners) ? say.rounded(length(corners.tl)) : say.roundedCorners(list(rounded));
}

/** True when all four corners are alike. */
export function isEven(corners: Corners): boolean {
  return CORNERS.every((corner) => corners[corner] === corners.tl);
}

/** The punched edges of a piece, those of one punch together. */
export function punchedEdges(
  sketch: Sketch,
  piece: Piece,
): readonly { readonly punch: string; readonly edges: readonly Edge[] }[] {
  const byPunch = new Map<string, Edge[]>();
  for (const edge of EDGES) {
    const id = piece.punched[edge];
    if (id !== undefined) byPunch.set(id, [...(byPunch.get(id) ?? []), edge]);
  }
  return [...byPunch].map(([id, edges]) => ({
    punch: sketch.punches.find((punch) => punch.id === id)?.name ?? id,
    edges,
  }));
}

/** The shape of a piece that is no rectangle; an oval as wide as high is a circle. */
export function shapeText({ shape, width, height }: Piece, { say }: Speech): string {
  if (shape === 'rectangle') return '';
  if (shape === 'ellipse') return width === height ? say.shape.circle : say.shape.ellipse;
  return say.shape[shape];
}

/** A line that begins with a capital. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
