import type { Mark } from './mark.js';
import type { Ink, Theme } from './theme.js';

/** Hundredths of a millimetre as user units (a unit is 0.1 mm). */
function hundredths(value: number): string {
  return String(value / 10);
}

/** Letters have no outline of their own but a rim of the halo's colour behind them. */
function letterAttributes({ fill, weight, halo }: Ink): Record<string, string> {
  return {
    ...(fill === undefined || fill === 'none' ? {} : { fill }),
    ...(weight === undefined ? {} : { 'font-weight': String(weight) }),
    ...(halo === undefined
      ? {}
      : { stroke: halo, 'stroke-width': '0.25em', 'stroke-linejoin': 'round', 'paint-order': 'stroke' }),
  };
}

function inkAttributes(ink: Ink): Record<string, string> {
  return {
    ...(ink.stroke === undefined ? {} : { stroke: ink.stroke }),
    ...(ink.fill === undefined ? {} : { fill: ink.fill }),
    ...(ink.width === undefined ? {} : { 'stroke-width': hundredths(ink.width) }),
    ...(ink.dash === undefined ? {} : { 'stroke-dasharray': ink.dash.map(hundredths).join(' ') }),
    ...(ink.opacity === undefined || ink.opacity === 1 ? {} : { 'fill-opacity': String(ink.opacity) }),
  };
}

/** A mark and all in it with the ink of their roles; what a mark says of itself goes before it. */
export function inkMark(mark: Mark, theme: Theme): Mark {
  const role = mark.attributes['data-role'] as keyof Theme | undefined;
  const { children } = mark;
  const style = mark.tag === 'text' ? letterAttributes : inkAttributes;
  const ink = mark.tag === 'g' || !role ? {} : style(theme[role]);
  const all = { ...mark, attributes: { ...ink, ...mark.attributes } };
  return children ? { ...all, children: children.map((child) => inkMark(child, theme)) } : all;
}
