import { scrapName } from '../../state/apply-choices.js';
import type { Choices } from '../../state/choices.js';

/** Choices without the scrap at `index`; what was cut from it goes back to its paper, and those behind it move up. */
export function withoutScrap({ scraps = [], from = [] }: Choices, index: number): Pick<Choices, 'scraps' | 'from'> {
  const renamed = new Map(
    scraps.map((_, at) => [scrapName(at), at === index ? null : scrapName(at > index ? at - 1 : at)]),
  );
  const moved = from.flatMap(({ piece, from: source }) => {
    const now = renamed.has(source) ? renamed.get(source) : source;
    return now ? [{ piece, from: now }] : [];
  });
  return { scraps: scraps.filter((_, at) => at !== index), from: moved };
}
