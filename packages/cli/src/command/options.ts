/** The words of a command line, sorted. */
export interface Words {
  readonly names: readonly string[];
  readonly flags: ReadonlySet<string>;
  readonly values: ReadonlyMap<string, string>;
}

/** What is wrong with a command line, as one sentence. */
export class UsageError extends Error {
  override readonly name = 'UsageError';
}

/**
 * Sorts `words` into names, flags (`--json`) and values (`--cards 12`, `--cards=12`). `-` alone is a name.
 * @throws UsageError for an option that is in neither list, or one that lacks its value.
 */
export function sortWords(words: readonly string[], flags: readonly string[], values: readonly string[]): Words {
  const names: string[] = [];
  const found = new Set<string>();
  const given = new Map<string, string>();
  for (let at = 0; at < words.length; at += 1) {
    const word = words[at] ?? '';
    if (!word.startsWith('--')) {
      if (word.startsWith('-') && word !== '-') throw new UsageError(`There is no option ${word}.`);
      names.push(word);
      continue;
    }
    const [, name = '', inline] = /^--([^=]*)(?:=(.*))?$/s.exec(word) ?? [];
    if (flags.includes(name) && inline === undefined) {
      found.add(name);
    } else if (values.includes(name)) {
      const value = inline ?? words[++at];
      if (value === undefined) throw new UsageError(`--${name} needs a value.`);
      given.set(name, value);
    } else {
      throw new UsageError(
        `There is no option ${word}; there are ${[...flags, ...values].map((option) => `--${option}`).join(', ')}.`,
      );
    }
  }
  return { names, flags: found, values: given };
}

/** A whole number between `least` and `most`, or undefined when the option was not given. @throws UsageError */
export function wholeNumber(words: Words, name: string, least: number, most: number): number | undefined {
  const text = words.values.get(name);
  if (text === undefined) return undefined;
  const value = Number(text);
  if (!/^\d+$/.test(text) || value < least || value > most) {
    throw new UsageError(`--${name} is ${JSON.stringify(text)}; allowed: a whole number from ${least} to ${most}.`);
  }
  return value;
}

/** One of the words allowed, or undefined when the option was not given. @throws UsageError */
export function oneOf<Word extends string>(words: Words, name: string, allowed: readonly Word[]): Word | undefined {
  const given = words.values.get(name);
  const found = allowed.find((word) => word === given);
  if (given !== undefined && found === undefined)
    throw new UsageError(`--${name} is ${JSON.stringify(given)}; allowed: ${allowed.join(', ')}.`);
  return found;
}

/** The single file that a command works on. @throws UsageError when there is none or more than one. */
export function onlyName(words: Words, what: string): string {
  const [name, ...others] = words.names;
  if (name === undefined || others.length > 0) throw new UsageError(`Name one ${what}, got ${words.names.length}.`);
  return name;
}
