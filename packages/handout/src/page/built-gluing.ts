import type { Sketch } from '@trimwell/sketch';
import { buildSteps, faceStack } from '@trimwell/sketch/assembly';
import { type Glued, stepOnto } from './gluing.js';

/** The gluing of a card by the steps in which it is built, so that the pages say what a check and the editor say. */
export function builtGluing(sketch: Sketch): readonly Glued[] {
  return buildSteps(sketch, faceStack(sketch, 'front'), faceStack(sketch, 'inside'))
    .filter(({ adhesive }) => adhesive !== null)
    .map((step) => ({ piece: step.piece, face: step.face, onto: stepOnto(sketch, step), foam: step.foam }));
}
