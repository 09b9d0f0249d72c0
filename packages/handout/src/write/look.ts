import type { Look } from '@trimwell/sketch';
import type { Mark } from './mark.js';
import { unit } from './units.js';

/** A mark that never changes, its lengths as shares of the repeat. */
function mark(tag: Mark['tag'], attributes: Readonly<Record<string, string>>): Mark {
  return { tag, key: '', attributes };
}

function rect(repeat: number, x: number, y: number, width: number, height: number, fill: string, opacity = 1): Mark {
  const share = (value: number): string => unit(Math.round(value * repeat));
  const clear = opacity === 1 ? {} : { 'fill-opacity': String(opacity) };
  return mark('rect', { x: share(x), y: share(y), width: share(width), height: share(height), fill, ...clear });
}

function circle(repeat: number, x: number, y: number, radius: number, fill: string): Mark {
  const share = (value: number): string => unit(Math.round(value * repeat));
  return mark('circle', { cx: share(x), cy: share(y), r: share(radius), fill });
}

/** A stroke through points given as shares of the repeat: `M` for the first of each run, `L`, `Q` as they stand. */
function stroke(repeat: number, data: readonly (string | number)[], ink: string, width: number): Mark {
  const d = data.map((word) => (typeof word === 'number' ? unit(Math.round(word * repeat)) : word)).join(' ');
  return mark('path', {
    d,
    fill: 'none',
    stroke: ink,
    'stroke-width': unit(Math.round(width * repeat)),
    'stroke-linecap': 'round',
  });
}

function star(repeat: number, x: number, y: number, radius: number, fill: string): Mark {
  const points = Array.from({ length: 10 }, (_, index) => {
    const angle = (index * Math.PI) / 5 - Math.PI / 2;
    const reach = index % 2 === 0 ? radius : radius * 0.42;
    const share = (value: number): string => unit(Math.round(value * repeat));
    return `${index === 0 ? 'M' : 'L'}${share(x + reach * Math.cos(angle))} ${share(y + reach * Math.sin(angle))}`;
  });
  return mark('path', { d: `${points.join('')}Z`, fill });
}

function sprig(repeat: number, x: number, y: number, lean: number, ink: string, berry: string): readonly Mark[] {
  const at = (dx: number, dy: number): readonly [number, number] => [x + dx * lean, y + dy];
  return [
    stroke(repeat, ['M', ...at(-0.12, 0.16), 'Q', ...at(-0.06, 0), ...at(0.1, -0.14)], ink, 0.026),
    stroke(repeat, ['M', ...at(-0.07, 0.06), 'Q', ...at(-0.16, 0.04), ...at(-0.18, -0.05)], ink, 0.026),
    stroke(repeat, ['M', ...at(-0.01, -0.03), 'Q', ...at(0.1, 0.02), ...at(0.16, -0.02)], ink, 0.026),
    stroke(repeat, ['M', ...at(0.02, -0.07), 'Q', ...at(-0.05, -0.12), ...at(-0.04, -0.19)], ink, 0.026),
    circle(repeat, ...at(0.13, -0.19), 0.035, berry),
    circle(repeat, ...at(0.2, 0.02), 0.028, berry),
  ];
}

function pattern({ pattern: name, inks, repeat }: Look): readonly Mark[] {
  const [ink = '#7c8a80', second = ink, third = second] = inks;
  switch (name) {
    case 'plain':
      return [];
    case 'stripe':
      return [rect(repeat, 0, 0, 0.34, 1, ink), rect(repeat, 0.58, 0, 0.08, 1, second)];
    case 'dot':
      return [circle(repeat, 0.25, 0.25, 0.13, ink), circle(repeat, 0.75, 0.75, 0.13, second)];
    case 'gingham':
      return [rect(repeat, 0, 0, 0.5, 1, ink, 0.5), rect(repeat, 0, 0, 1, 0.5, ink, 0.5)];
    case 'sprig':
      return [...sprig(repeat, 0.27, 0.28, 1, ink, second), ...sprig(repeat, 0.75, 0.76, -1, ink, second)];
    case 'plaid':
      return [
        rect(repeat, 0.08, 0, 0.3, 1, ink, 0.42),
        rect(repeat, 0, 0.08, 1, 0.3, ink, 0.42),
        rect(repeat, 0.66, 0, 0.06, 1, second, 0.8),
        rect(repeat, 0, 0.66, 1, 0.06, second, 0.8),
        rect(repeat, 0.8, 0, 0.03, 1, third, 0.9),
        rect(repeat, 0, 0.8, 1, 0.03, third, 0.9),
      ];
    case 'star':
      return [
        star(repeat, 0.26, 0.27, 0.16, ink),
        star(repeat, 0.76, 0.77, 0.16, second),
        circle(repeat, 0.76, 0.24, 0.025, second),
        circle(repeat, 0.25, 0.76, 0.025, ink),
      ];
    case 'lettering':
      return [
        stroke(
          repeat,
          [
            'M',
            0.06,
            0.22,
            'Q',
            0.12,
            0.1,
            0.18,
            0.22,
            'Q',
            0.22,
            0.3,
            0.28,
            0.2,
            'Q',
            0.34,
            0.12,
            0.4,
            0.22,
            'M',
            0.5,
            0.22,
            'Q',
            0.56,
            0.08,
            0.6,
            0.22,
            'Q',
            0.68,
            0.28,
            0.72,
            0.18,
            'Q',
            0.8,
            0.14,
            0.86,
            0.22,
          ],
          ink,
          0.024,
        ),
        stroke(
          repeat,
          [
            'M',
            0.12,
            0.72,
            'Q',
            0.16,
            0.58,
            0.24,
            0.72,
            'Q',
            0.3,
            0.8,
            0.34,
            0.7,
            'M',
            0.44,
            0.72,
            'Q',
            0.5,
            0.6,
            0.56,
            0.72,
            'Q',
            0.6,
            0.78,
            0.66,
            0.68,
            'Q',
            0.74,
            0.6,
            0.8,
            0.72,
            'Q',
            0.86,
            0.76,
            0.92,
            0.7,
          ],
          second,
          0.024,
        ),
      ];
  }
}

/** The pattern that fills areas of a paper: its ground and its print, one repeat, in user units; `id` is its own. */
export function lookPattern(look: Look, id: string): Mark {
  const size = unit(look.repeat);
  return {
    tag: 'pattern',
    key: id,
    attributes: { id, patternUnits: 'userSpaceOnUse', width: size, height: size },
    children: [mark('rect', { width: size, height: size, fill: look.ground }), ...pattern(look)],
  };
}

/** The `fill` of an area of a paper: a flat colour, or the address of its pattern. */
export function lookFill(look: Look, id: string): string {
  return look.pattern === 'plain' ? look.ground : `url(#${id})`;
}
