import { assembly, type FaceStack, letterLimits, safeFindings } from '@trimwell/sketch/assembly';
import type { AssemblySight, AssemblySubject, FaceHeights } from './assembly-messages.js';

function heightsOf({ pieces, heights }: FaceStack): FaceHeights {
  const { layers, height, highest } = heights;
  return {
    pieces: pieces.map(({ id }) => id),
    layers,
    height,
    highest: highest === null ? null : (pieces[highest]?.id ?? null),
  };
}

/** What is known of building the card of `subject`, as it is handed over to the table. */
export function assemblySight({ sketch, batch, post }: AssemblySubject): AssemblySight {
  const found = assembly(sketch, { ...(batch ? { batch } : {}), ...(post === null ? {} : { post }) });
  const { sketch: _sketch, options: _options, profiles: _profiles, batchWeight, front, inside, ...facts } = found;
  return {
    ...facts,
    front: heightsOf(front),
    inside: heightsOf(inside),
    pieces: safeFindings(found),
    batchGrams: batchWeight?.grams ?? null,
    countries: letterLimits().countries.map(({ code, name }) => ({ code, name })),
  };
}
