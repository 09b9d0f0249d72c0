import type { Role, TextFace } from '../drawing/drawing.js';
import { POINT } from './sheet-of-paper.js';

/** How a line of text is set: its hand, its size and the distance from line to line in ticks, and the ink by its role. */
export interface TextStyle {
  readonly face: TextFace;
  readonly size: number;
  readonly leading: number;
  readonly role: Extract<Role, 'figure' | 'note' | 'label'>;
}

function style(face: TextFace, points: number, leading: number, role: TextStyle['role'] = 'figure'): TextStyle {
  return { face, size: points * POINT, leading: leading * POINT, role };
}

/** The hands of a handout. `note` is grey, everything else in the ink. */
export const STYLES = {
  title: style('heading', 25, 29),
  section: style('heading', 14.5, 18),
  part: style('heading', 10.5, 13.5),
  head: style('strong', 7.5, 11, 'note'),
  body: style('text', 9, 12),
  strong: style('strong', 9, 12),
  italic: style('italic', 9, 12, 'note'),
  lead: style('italic', 10.5, 14, 'note'),
  small: style('text', 7.5, 9.5, 'note'),
} as const satisfies Readonly<Record<string, TextStyle>>;

/** Ink of the quiet lines between parts: lighter than any line of a drawing. */
export const RULE_INK = '#c8c2b2';
/** Ink of the boxes to be ticked. */
export const BOX_INK = '#8a8577';
