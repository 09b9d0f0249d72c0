import { ticks, type Unit } from '@trimwell/geometry';
import * as z from 'zod/mini';
import { lengthsIn } from './lengths.js';
import {
  AS_MANY_AS_POSSIBLE,
  EDGES,
  LINK_ADDRESS,
  LONGEST_NAME,
  MOST_CONTRASTS,
  MOST_EDITS,
  MOST_IN_CONTRAST,
  MOST_IN_MIX,
  MOST_MIXES,
  MOST_PAPERS,
  MOST_PER_CARD,
  MOST_PIECES,
  MOST_PUNCHES,
  MOST_VARIATIONS,
  MOTIFS,
  PAPER_KINDS,
  PATTERNS,
  PIECE_KINDS,
  PROFILES,
  SHAPES,
} from './vocabulary.js';

export * from './vocabulary.js';

/** Words of an identifier inside a sketch: short, plain and safe to use as a key anywhere. */
// No two hyphens in a row: they join a piece's id and a paper's in the names of blanks.
const id = z.string().check(z.maxLength(40), z.regex(/^[a-z0-9]+(-[a-z0-9]+)*$/));
const colour = z.string().check(z.regex(/^#[0-9a-f]{6}$/));
const name = z.string().check(z.minLength(1), z.maxLength(LONGEST_NAME));
const words = (longest: number) => z.string().check(z.maxLength(longest));
const count = (least: number, most: number) => z.int().check(z.minimum(least), z.maximum(most));
const between = (least: number, most: number) => z.number().check(z.minimum(least), z.maximum(most));

/**
 * The schema of every record of a sketch, for bare numbers in `unit`. It reads in one direction (document to value,
 * lengths to ticks) and writes in the other; the types of this package come from it and from nowhere else. Unknown
 * keys are refused, so that nothing is silently dropped.
 */
function records(unit: Unit) {
  const { side, repeat, place, amount } = lengthsIn(unit);
  const nought = z._default(amount, ticks(0));

  const margins = z.strictObject({ top: nought, right: nought, bottom: nought, left: nought });
  const look = z.strictObject({
    pattern: z.enum(PATTERNS),
    ground: colour,
    inks: z.array(colour).check(z.maxLength(4)),
    repeat,
    // The user's own photograph of the sheet, by the hash of its bytes. It stays on their machine; the print drawn by us
    // stands in for it wherever the photograph is not at hand.
    photo: z.optional(z.string().check(z.regex(/^[0-9a-f]{16,64}$/))),
  });
  const paper = z.strictObject({
    id,
    name,
    kind: z.enum(PAPER_KINDS),
    width: side,
    height: side,
    sheets: z.optional(count(0, 999)),
    price: z.optional(between(0, 10_000)),
    directional: z._default(z.boolean(), false),
    doubleSided: z._default(z.boolean(), false),
    margins: z.prefault(margins, {}),
    gsm: z.optional(between(10, 2_000)),
    caliper: z.optional(side),
    // The side of the sheet that its fibres run along; left out where nobody has tried it.
    grain: z.optional(z.enum(['width', 'height'])),
    look,
  });
  const mix = z.strictObject({ id, name, papers: z.array(id).check(z.minLength(1), z.maxLength(MOST_IN_MIX)) });
  const punch = z.strictObject({ id, name, profile: z.enum(PROFILES), repeat, depth: side, bite: nought });
  const corners = z.strictObject({ tl: nought, tr: nought, br: nought, bl: nought });
  const punched = z.strictObject({
    top: z.optional(id),
    right: z.optional(id),
    bottom: z.optional(id),
    left: z.optional(id),
  });
  const art = z.strictObject({ motif: z.enum(MOTIFS), words: z._default(words(120), ''), ink: colour });
  // Concentric corners follow those of the matted piece, so that the reveal is as wide round a corner as along an edge.
  const mats = z.strictObject({ piece: id, reveal: side, concentric: z.optional(z.boolean()) });
  const piece = z.strictObject({
    id,
    name,
    kind: z.enum(PIECE_KINDS),
    face: z._default(z.enum(['front', 'inside']), 'front'),
    shape: z._default(z.enum(SHAPES), 'rectangle'),
    x: place,
    y: place,
    width: side,
    height: side,
    tilt: z._default(between(-180, 180), 0),
    corners: z.prefault(corners, {}),
    punched: z.prefault(punched, {}),
    from: id,
    raise: nought,
    perCard: z._default(count(1, MOST_PER_CARD), 1),
    mats: z.optional(mats),
    art: z.optional(art),
    // Two helps while working: a locked piece is not moved by mistake, a hidden one is out of the way on the table. Both
    // are cut and glued like any other.
    locked: z.optional(z.boolean()),
    hidden: z.optional(z.boolean()),
  });
  const card = z.strictObject({
    width: side,
    height: side,
    fold: z.enum(['left', 'top', 'none']),
    base: id,
    envelope: z.optional(z.strictObject({ name, width: side, height: side })),
  });
  const cards = z.union([count(1, 500), z.literal(AS_MANY_AS_POSSIBLE)]);
  const apart = z.array(id).check(z.minLength(2), z.maxLength(MOST_IN_CONTRAST));
  const contrast = z.array(apart).check(z.maxLength(MOST_CONTRASTS));
  const batch = z.strictObject({
    cards,
    contrast: z._default(contrast, []),
    // Two ways to save paper that are offered, never assumed.
    stoppedCuts: z._default(z.boolean(), false),
    hiddenCentres: z._default(z.boolean(), false),
  });
  const link = z.strictObject({
    text: name,
    address: z.string().check(z.maxLength(500), z.regex(LINK_ADDRESS)),
  });
  const links = z.array(link).check(z.maxLength(24));
  const supplies = z.array(words(200)).check(z.maxLength(48));
  const text = { title: name, number: words(24), credit: words(200), notes: words(4_000) };

  const change = [
    z.strictObject({
      do: z.literal('describe'),
      title: z.optional(text.title),
      number: z.optional(text.number),
      credit: z.optional(text.credit),
      notes: z.optional(text.notes),
      links: z.optional(links),
      supplies: z.optional(supplies),
    }),
    z.strictObject({ do: z.literal('unit'), unit: z.enum(['in', 'mm']) }),
    z.strictObject({ do: z.literal('card'), card }),
    z.strictObject({ do: z.literal('batch'), batch }),
    z.strictObject({ do: z.literal('add-piece'), piece, at: z.optional(count(0, 1_000)) }),
    z.strictObject({ do: z.literal('remove-piece'), piece: id }),
    z.strictObject({ do: z.literal('place'), piece: id, x: place, y: place }),
    z.strictObject({ do: z.literal('resize'), piece: id, x: place, y: place, width: side, height: side }),
    z.strictObject({ do: z.literal('tilt'), piece: id, tilt: between(-180, 180) }),
    z.strictObject({ do: z.literal('round'), piece: id, corners }),
    z.strictObject({ do: z.literal('punch'), piece: id, edge: z.enum(EDGES), punch: z.nullable(id) }),
    z.strictObject({ do: z.literal('order'), piece: id, to: count(0, 1_000) }),
    z.strictObject({ do: z.literal('cut-from'), piece: id, from: id }),
    z.strictObject({ do: z.literal('mat'), piece: id, mats: z.nullable(mats) }),
    z.strictObject({
      do: z.literal('alter-piece'),
      piece: id,
      name: z.optional(name),
      kind: z.optional(z.enum(PIECE_KINDS)),
      face: z.optional(z.enum(['front', 'inside'])),
      shape: z.optional(z.enum(SHAPES)),
      raise: z.optional(amount),
      perCard: z.optional(count(1, MOST_PER_CARD)),
      art: z.optional(z.nullable(art)),
      locked: z.optional(z.boolean()),
      hidden: z.optional(z.boolean()),
    }),
    z.strictObject({ do: z.literal('set-paper'), paper }),
    z.strictObject({ do: z.literal('remove-paper'), paper: id }),
    z.strictObject({ do: z.literal('set-mix'), mix }),
    z.strictObject({ do: z.literal('remove-mix'), mix: id }),
    z.strictObject({ do: z.literal('set-punch'), punch }),
    z.strictObject({ do: z.literal('remove-punch'), punch: id }),
  ] as const;
  const variation = z.strictObject({
    id,
    name,
    note: z._default(words(400), ''),
    edits: z.array(z.discriminatedUnion('do', change)).check(z.maxLength(MOST_EDITS)),
  });
  // A variation is made of changes to the card; it does not change variations.
  const edit = z.discriminatedUnion('do', [
    ...change,
    z.strictObject({ do: z.literal('set-variation'), variation, at: z.optional(count(0, MOST_VARIATIONS)) }),
    z.strictObject({ do: z.literal('remove-variation'), variation: id }),
  ]);
  const sketch = z.strictObject({
    trimwell: z.literal(1),
    id,
    title: text.title,
    number: z.optional(text.number),
    credit: z.optional(text.credit),
    notes: z.optional(text.notes),
    links: z._default(links, []),
    supplies: z._default(supplies, []),
    unit: z.enum(['in', 'mm']),
    card,
    papers: z.array(paper).check(z.minLength(1), z.maxLength(MOST_PAPERS)),
    mixes: z._default(z.array(mix).check(z.maxLength(MOST_MIXES)), []),
    punches: z._default(z.array(punch).check(z.maxLength(MOST_PUNCHES)), []),
    pieces: z._default(z.array(piece).check(z.maxLength(MOST_PIECES)), []),
    batch,
    variations: z._default(z.array(variation).check(z.maxLength(MOST_VARIATIONS)), []),
  });
  // Pieces by themselves, with all that they are cut from and punched with, as they are handed from one sketch to another.
  const copied = z.strictObject({
    trimwellCopy: z.literal(1),
    unit: z.enum(['in', 'mm']),
    pieces: z.array(piece).check(z.minLength(1), z.maxLength(MOST_PIECES)),
    papers: z.array(paper).check(z.minLength(1), z.maxLength(MOST_PAPERS)),
    mixes: z._default(z.array(mix).check(z.maxLength(MOST_MIXES)), []),
    punches: z._default(z.array(punch).check(z.maxLength(MOST_PUNCHES)), []),
  });
  return { sketch, edit, copied };
}

const inInches = records('in');
const inMillimetres = records('mm');

/** The schema of a sketch whose bare numbers are in `unit`. */
export function sketchSchema(unit: Unit): typeof inInches.sketch {
  return unit === 'in' ? inInches.sketch : inMillimetres.sketch;
}

/** The schema of one edit whose bare numbers are in `unit`. */
export function editSchema(unit: Unit): typeof inInches.edit {
  return unit === 'in' ? inInches.edit : inMillimetres.edit;
}

/** The schema of copied pieces whose bare numbers are in `unit`. */
export function copiedPiecesSchema(unit: Unit): typeof inInches.copied {
  return unit === 'in' ? inInches.copied : inMillimetres.copied;
}

type DeepReadonly<T> = T extends number | string | boolean | null | undefined
  ? T
  : T extends readonly (infer U)[]
    ? readonly DeepReadonly<U>[]
    : { readonly [K in keyof T]: DeepReadonly<T[K]> };

/** A sketch as a value: lengths in ticks, every default filled in, never changed in place. */
export type Sketch = DeepReadonly<z.output<typeof inInches.sketch>>;
/** A sketch as JSON: lengths as texts or bare numbers, defaults may be left out. */
export type SketchDocument = z.input<typeof inInches.sketch>;
/** Pieces with the papers, mixes and punches that they need, as a value: lengths in ticks. */
export type CopiedPieces = DeepReadonly<z.output<typeof inInches.copied>>;
export type Edit = DeepReadonly<z.output<typeof inInches.edit>>;
export type EditDocument = z.input<typeof inInches.edit>;
export type Card = Sketch['card'];
export type Paper = Sketch['papers'][number];
export type Look = Paper['look'];
export type Mix = Sketch['mixes'][number];
export type Punch = Sketch['punches'][number];
export type Piece = Sketch['pieces'][number];
export type Corners = Piece['corners'];
export type Face = Piece['face'];
export type Shape = Piece['shape'];
export type Batch = Sketch['batch'];
export type Variation = Sketch['variations'][number];
/** A change to the card itself, as variations are made of. */
export type CardEdit = Variation['edits'][number];
export type Edge = (typeof EDGES)[number];
