import type { Outline, Point } from '@trimwell/geometry';
import type { Look, Paper } from '@trimwell/sketch';

/**
 * What an item of a drawing means. A theme turns a role into ink; a role is never a colour, and no meaning hangs on
 * colour alone (cut lines are continuous, fold lines dashed, hidden edges short-dashed, dimensions thin: ISO 128 practice).
 */
export type Role =
  | 'sheet' // the outline of a whole sheet of paper
  | 'margin' // the part of a sheet that cannot be used
  | 'paper' // an area filled with a paper's own look
  | 'outline' // the visible edge of a piece
  | 'hidden' // an edge that something covers
  | 'shadow' // depth under a piece, decoration only
  | 'foam' // a pad of foam adhesive under a piece
  | 'cut' // a straight cut across a part
  | 'blank' // the rectangle of a blank on a sheet
  | 'offcut' // what is left over
  | 'fold' // a score
  | 'dimension' // a dimension line, its witness lines and ends
  | 'leader' // a line from a label to what it names
  | 'label' // the letter that names a piece everywhere
  | 'figure' // a dimension figure
  | 'note' // any other text
  | 'art'; // printed decoration standing in for a stamped or printed image

/** A paper's look; `sheet` is what a photograph of it spans, and is stated only for a look that has one. */
export interface SheetLook extends Look {
  readonly sheet?: Pick<Paper, 'width' | 'height'>;
}

/** The look that an item's area is filled with; the writer makes a pattern of it. `id` is the paper's id. */
export interface PaperFill {
  readonly paper: string;
}

interface ItemBase {
  /** Stable within one drawing and from one drawing to the next, so that a live view updates only what changed. */
  readonly key: string;
  readonly role: Role;
  /** The piece that this item belongs to, so that pointing at it lights the piece up everywhere. */
  readonly piece?: string;
}

/** A closed outline, or an `open` one. `ink` is the colour of printed art, which is content and not style. */
export interface PathItem extends ItemBase {
  readonly kind: 'path';
  readonly outline: Outline;
  readonly fill?: PaperFill;
  readonly open?: boolean;
  readonly ink?: string;
}

export interface LineItem extends ItemBase {
  readonly kind: 'line';
  readonly from: Point;
  readonly to: Point;
}

/** The hand that a text is set in: upright, semibold, italic, the headings' serif, the art's italic serif. */
export type TextFace = 'text' | 'strong' | 'italic' | 'heading' | 'art';

/** Text at `at`; `size` is the height of the letters' em in ticks, `turn` degrees clockwise about `at`. */
export interface TextItem extends ItemBase {
  readonly kind: 'text';
  readonly at: Point;
  readonly text: string;
  readonly size: number;
  readonly align: 'start' | 'middle' | 'end';
  readonly turn?: number;
  readonly ink?: string;
  /** Stated where the role does not say it: a label is `strong`, art is `art`, all else is `text`. */
  readonly face?: TextFace;
}

/** A picture, by address, drawn over the rectangle at `at`. */
export interface ImageItem extends ItemBase {
  readonly kind: 'image';
  readonly at: Point;
  readonly width: number;
  readonly height: number;
  readonly href: string;
}

/**
 * Items with coordinates of their own: the point `origin` of theirs lands on `move`, and they are turned clockwise about
 * it by `turn` degrees. Moving a piece changes nothing but `move`.
 */
export interface GroupItem extends ItemBase {
  readonly kind: 'group';
  readonly origin: Point;
  readonly move: Point;
  readonly turn: number;
  readonly items: readonly Item[];
  /** What a reader without eyes is told about this group. */
  readonly title?: string;
}

export type Item = PathItem | LineItem | TextItem | ImageItem | GroupItem;

/**
 * One display list for screen and paper, so that they cannot disagree. Coordinates are floating ticks, y down, painted
 * in order. `box` is what must be visible; `title` and `description` are its text alternative.
 */
export interface Drawing {
  readonly title: string;
  readonly description: string;
  readonly box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
  readonly items: readonly Item[];
  /** The looks of the papers that items are filled with, by paper id. */
  readonly looks: Readonly<Record<string, SheetLook>>;
}
