import * as z from 'zod/mini';
import {
  type Edit,
  type EditDocument,
  editSchema,
  type Sketch,
  type SketchDocument,
  sketchSchema,
} from '../model/sketch.js';

/** The document of `sketch`: every length as a text that reads back as exactly the same ticks, keys in schema order. */
export function writeSketch(sketch: Sketch): SketchDocument {
  return z.encode(sketchSchema(sketch.unit), sketch as z.output<ReturnType<typeof sketchSchema>>);
}

/** The text of a sketch file: JSON, two spaces, a line feed at the end. */
export function writeSketchText(sketch: Sketch): string {
  return `${JSON.stringify(writeSketch(sketch), null, 2)}\n`;
}

/** The document of one edit, lengths as texts in `unit`. */
export function writeEdit(edit: Edit, unit: Sketch['unit']): EditDocument {
  return z.encode(editSchema(unit), edit as z.output<ReturnType<typeof editSchema>>);
}
