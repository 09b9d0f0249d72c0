import { fileStem } from '../sheet-guides.js';

/** Longest part of a name, so that three of them are far below what any file system takes. */
const LONGEST = 48;

/** `text` as a part of a file name, `otherwise` when nothing of it can be written in plain letters. */
export function namePart(text: string, otherwise: string): string {
  // Without a letter or figure that is plain, or has a plain one under its accent, nothing would be left to read.
  if (!/[a-z0-9]/i.test(text.normalize('NFKD'))) return otherwise;
  return fileStem(text).slice(0, LONGEST).replace(/-+$/, '');
}

/** Gives every name once: one that was given before gets the lowest number that makes it new. */
export function uniqueNames(): (name: string) => string {
  const given = new Set<string>();
  return (name) => {
    let [free, number] = [name, 2];
    while (given.has(free)) {
      free = `${name}-${number}`;
      number += 1;
    }
    given.add(free);
    return free;
  };
}
