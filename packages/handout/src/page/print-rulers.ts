import { inches, millimetres, type Point } from '@trimwell/geometry';
import type { Item } from '../drawing/drawing.js';
import { blockAt } from './atom.js';
import type { TextMeasure } from './measure.js';
import type { PageBlock } from './page.js';
import { POINT } from './sheet-of-paper.js';
import type { Speech } from './speech.js';
import { textAtom } from './text-atoms.js';
import { STYLES } from './text-style.js';

/** Room for the rulers at the foot of a template page. */
export const RULERS_HEIGHT = millimetres(17);

interface RulerSpec {
  readonly key: string;
  readonly length: number;
  readonly marks: number;
  /** Every so many marks is a long one. */
  readonly long: number;
  readonly label: string;
}

function ruler({ key, length, marks, long, label }: RulerSpec, at: Point): readonly Item[] {
  const line = (name: string, from: Point, to: Point): Item => ({
    kind: 'line',
    key: `${key}:${name}`,
    role: 'dimension',
    from,
    to,
  });
  const ticks = Array.from({ length: marks + 1 }, (_, index): Item => {
    const x = at.x + (length * index) / marks;
    return line(`mark${index}`, { x, y: at.y }, { x, y: at.y - (index % long === 0 ? 9 : 5) * POINT });
  });
  const { size, face } = STYLES.small;
  return [
    line('line', at, { x: at.x + length, y: at.y }),
    ...ticks,
    {
      kind: 'text',
      key: `${key}:label`,
      role: 'figure',
      at: { x: at.x + length + 5 * POINT, y: at.y },
      text: label,
      size,
      align: 'start',
      face,
    },
  ];
}

/**
 * Rulers of exactly 2 in and 50 mm with their lower edges at `at`, to see whether a page was printed at its true size, and
 * above them a sentence, at most `width` wide, that says so.
 */
export function printRulers(at: Point, width: number, speech: Speech, measure: TextMeasure): readonly PageBlock[] {
  const { templates } = speech.say;
  const { size, face } = STYLES.small;
  const second = { x: at.x + inches(2) + millimetres(25), y: at.y };
  const right = second.x + millimetres(50) + 5 * POINT + measure.width(templates.fiftyMillimetres, size, face);
  const items = [
    ...ruler({ key: 'inches', length: inches(2), marks: 16, long: 8, label: templates.twoInches }, at),
    ...ruler(
      { key: 'millimetres', length: millimetres(50), marks: 50, long: 10, label: templates.fiftyMillimetres },
      second,
    ),
  ];
  const top = at.y - 10 * POINT;
  const words = textAtom(templates.scale, STYLES.small, width, measure);
  return [
    blockAt('Figure', { x: at.x, y: top, width: right - at.x + POINT, height: 13 * POINT }, items, {
      alt: templates.rulerAlt,
    }),
    ...words.draw({ x: at.x, y: top - words.height - 3 * POINT }),
  ];
}
