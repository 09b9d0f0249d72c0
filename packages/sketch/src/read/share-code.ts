import { deflateSync, Inflate, strFromU8, strToU8 } from 'fflate';
import { type Problem, problemAt } from '../model/problem.js';
import type { Sketch } from '../model/sketch.js';
import { readBase64url, writeBase64url } from './base64url.js';
import { readSketchText, type SketchReading } from './read-sketch.js';
import { SHARE_WORDS } from './share-words.js';
import { withoutPhotographs } from './without-photographs.js';
import { writeSketch } from './write-sketch.js';

/** The letter in front says how the rest is packed; another packing or other shared words take the next letter. */
const PACKING = 'a';
/** Characters of the check sum at the end. */
const SUM = 4;
/** Longest code that is looked at. 200 pieces with their papers take about a tenth of it. */
export const LONGEST_SHARE_CODE = 100_000;
/** Most bytes that a code may unfold to, as for the text of a file. */
const MOST_BYTES = 2_000_000;
/** Bytes that are unfolded at a time: at most a thousandfold comes out before the size is looked at again. */
const PORTION = 256;

const WHOLE = 'a code exactly as it was copied, from its first character to its last';

/** A sum of all bytes in 24 bits (FNV-1a, 32 bits folded to 24), so that a cut or mistyped code is never read as another sketch. */
function checkSum(bytes: Uint8Array): string {
  let sum = 0x811c9dc5;
  for (const byte of bytes) sum = Math.imul(sum ^ byte, 0x01000193);
  const folded = ((sum >>> 24) ^ sum) & 0xffffff;
  return writeBase64url(new Uint8Array([folded >> 16, (folded >> 8) & 255, folded & 255]));
}

/**
 * The whole sketch as a short text of letters, digits, `-` and `_`, for the fragment of a link (base64url, RFC 4648
 * section 5, over DEFLATE, RFC 1951). The same sketch gives the same code. Photographs are left out.
 */
export function writeShareCode(sketch: Sketch): string {
  const bytes = strToU8(JSON.stringify(writeSketch(withoutPhotographs(sketch))));
  const packed = deflateSync(bytes, { level: 9, dictionary: strToU8(SHARE_WORDS) });
  return `${PACKING}${writeBase64url(packed)}${checkSum(bytes)}`;
}

/** The unfolded bytes; null when they are none, or more than `MOST_BYTES`: it stops there, whatever the code claims. */
function unfold(packed: Uint8Array): { readonly bytes: Uint8Array } | { readonly failed: 'broken' | 'too large' } {
  const parts: Uint8Array[] = [];
  let size = 0;
  let ended = false;
  const inflate = new Inflate({ dictionary: strToU8(SHARE_WORDS) }, (part, final) => {
    parts.push(part);
    size += part.length;
    ended ||= final;
  });
  try {
    for (let at = 0; at < packed.length; at += PORTION) {
      inflate.push(packed.subarray(at, at + PORTION), at + PORTION >= packed.length);
      if (size > MOST_BYTES) return { failed: 'too large' };
    }
  } catch (error) {
    // The library throws its own errors, with a code, for bytes that are no DEFLATE stream; anything else is a fault of ours.
    if (error instanceof Error && 'code' in error) return { failed: 'broken' };
    throw error;
  }
  if (!ended) return { failed: 'broken' };
  const bytes = new Uint8Array(size);
  let at = 0;
  for (const part of parts) {
    bytes.set(part, at);
    at += part.length;
  }
  return { bytes };
}

function refused(problem: Problem): SketchReading {
  return { ok: false, problems: [problem] };
}

/**
 * Reads what `writeShareCode` wrote, through the same door as a file: migrated, validated, refused with its problems.
 * A code that is cut short, mistyped, of an unknown packing, or that would unfold to more than 2 MB is refused as such.
 */
export function readShareCode(code: string): SketchReading {
  if (code.length > LONGEST_SHARE_CODE) {
    return refused(problemAt('too-large', [], code, `a code of at most ${LONGEST_SHARE_CODE} characters`));
  }
  if (!code.startsWith(PACKING)) {
    return refused(problemAt('unknown-packing', [], code, `a code that begins with "${PACKING}"`));
  }
  const packed = readBase64url(code.slice(PACKING.length, -SUM));
  if (!packed || packed.length === 0 || code.length <= PACKING.length + SUM) {
    return refused(problemAt('not-a-share-code', [], code, WHOLE));
  }
  const unfolded = unfold(packed);
  if ('failed' in unfolded) {
    return unfolded.failed === 'too large'
      ? refused(problemAt('too-large', [], code, `a code that unfolds to at most ${MOST_BYTES} bytes`))
      : refused(problemAt('not-a-share-code', [], code, WHOLE));
  }
  if (checkSum(unfolded.bytes) !== code.slice(-SUM)) return refused(problemAt('not-a-share-code', [], code, WHOLE));
  return readSketchText(strFromU8(unfolded.bytes));
}
