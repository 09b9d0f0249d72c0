import { parseArgs } from 'node:util';

/**
 * The options of a bench: `defaults` names them with their values; what is a number there is a whole number, 1 or more, and a text
 * that has `allowed` values is one of them. @throws Error that names the option, its value and what is allowed.
 */
export function readOptions(args, defaults, allowed = {}) {
  const options = Object.fromEntries(Object.keys(defaults).map((name) => [name, { type: 'string' }]));
  const { values } = parseArgs({ args, options });
  const read = { ...defaults };
  for (const [name, text] of Object.entries(values)) {
    if (allowed[name]) {
      if (!allowed[name].includes(text))
        throw new Error(`--${name} ${text}: it is one of ${allowed[name].join(', ')}.`);
      read[name] = text;
      continue;
    }
    const count = Number(text);
    if (!Number.isSafeInteger(count) || count < 1)
      throw new Error(`--${name} ${text}: it is a whole number, 1 or more.`);
    read[name] = count;
  }
  return read;
}
