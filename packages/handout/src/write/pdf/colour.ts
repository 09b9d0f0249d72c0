import { allPoints } from './number.js';

/** The operands of a colour in device RGB. @throws Error for anything but `#rrggbb`. */
export function rgb(colour: string): string {
  const [, red, green, blue] = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(colour) ?? [];
  if (red === undefined || green === undefined || blue === undefined)
    throw new Error(`An ink is ${JSON.stringify(colour)}; allowed: a colour as #rrggbb.`);
  return allPoints(...[red, green, blue].map((part) => Number.parseInt(part, 16) / 255));
}
