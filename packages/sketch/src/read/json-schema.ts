import * as z from 'zod/mini';
import { sketchSchema } from '../model/sketch.js';

/** The JSON Schema (2020-12) of a sketch document, generated from the schema that reads it. */
export function sketchJsonSchema(): object {
  return { title: 'Trimwell sketch', ...z.toJSONSchema(sketchSchema('in'), { io: 'input' }) };
}
