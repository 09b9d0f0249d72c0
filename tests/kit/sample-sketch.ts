import { expectSketch, type Sketch } from '@trimwell/sketch';
import { sampleDocument } from './sample-document.js';

/** The sample document, read. */
export function sampleSketch(): Sketch {
  return expectSketch(sampleDocument());
}
