import { type Atom, blockAt } from './atom.js';
import { frameWidth, type HandoutContext } from './context.js';
import type { PageBlock } from './page.js';
import { POINT } from './sheet-of-paper.js';
import { rowAtom, ruleItem } from './text-atoms.js';
import { STYLES } from './text-style.js';

/** `text`, or as much of it as is not wider than `width`, with an ellipsis. */
function shortened(text: string, width: number, { measure }: HandoutContext): string {
  const { size, face } = STYLES.small;
  const fits = (part: string): boolean => measure.width(part, size, face) <= width;
  if (fits(text)) return text;
  const letters = [...text];
  while (letters.length > 0 && !fits(`${letters.join('')}…`)) letters.pop();
  return `${letters.join('').trimEnd()}…`;
}

/** The running foot: the title and which page this is, below a quiet line. */
export function foot(page: number, count: number, context: HandoutContext): PageBlock {
  const { frame, measure, speech, sketch } = context;
  const width = frameWidth(context);
  const style = STYLES.small;
  const number = speech.say.page(page, count);
  const numberWidth = Math.ceil(measure.width(number, style.size, style.face)) + POINT;
  const titleWidth = width - numberWidth - 12 * POINT;
  const row: Atom = rowAtom(
    [
      { x: 0, width: titleWidth, words: [{ text: shortened(sketch.title, titleWidth, context), style }] },
      { x: width - numberWidth, width: numberWidth, words: [{ text: number, style }], align: 'end' },
    ],
    measure,
    { tag: 'Artifact' },
  );
  const above = 5 * POINT;
  const items = row.draw({ x: frame.left, y: frame.foot }).flatMap((block) => block.items);
  const line = ruleItem(frame.left, frame.foot - above, width, 'rule:foot');
  return blockAt('Artifact', { x: frame.left, y: frame.foot - above, width, height: row.height + above }, [
    line,
    ...items,
  ]);
}
