import { LONGEST_NAME } from '@trimwell/sketch';

/** Room that is left in a name for a number behind it. */
const FOR_A_NUMBER = 6;

/** `name`, or `name 2`, `name 3` … when one of `records` is called so. */
export function freeName(name: string, records: readonly { readonly name: string }[]): string {
  const stem = name.replace(/ \d+$/, '').slice(0, LONGEST_NAME - FOR_A_NUMBER);
  const taken = new Set(records.map((record) => record.name));
  if (!taken.has(name)) return name;
  for (let n = 2; ; n += 1) if (!taken.has(`${stem} ${n}`)) return `${stem} ${n}`;
}
