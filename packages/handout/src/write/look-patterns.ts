import { lookPattern } from './look.js';
import { isFlat, patternId } from './look-fill.js';
import type { Mark } from './mark.js';
import type { MarkContext } from './marks.js';

/** The patterns of all looks that are more than one flat colour. */
export function lookPatterns({ looks, prefix, photos }: MarkContext): readonly Mark[] {
  return Object.entries(looks)
    .filter(([, look]) => !isFlat(look, photos))
    .map(([paper, look]) => lookPattern(look, patternId(prefix, paper), photos));
}
