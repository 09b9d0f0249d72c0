import { strToU8, zipSync } from 'fflate';
import type { CutFiles } from './cut-files.js';

/**
 * The files and their read-me as one zip. All are dated the 1st of January 2000, and so built that the fields of the
 * date are the same in every time zone: equal files give equal bytes.
 */
export function zipCutFiles({ files, readMe }: CutFiles): Uint8Array {
  // zipSync writes the local date and hour, hence a local date.
  const mtime = new Date(2000, 0, 1);
  return zipSync(
    Object.fromEntries([readMe, ...files].map(({ name, text }) => [name, [strToU8(text), { level: 9, mtime, os: 0 }]])),
  );
}
