import type { Size } from '@trimwell/geometry';
import { type Card, type CardEdit, type Fold, fitToCard, LINK_ADDRESS, type Sketch } from '@trimwell/sketch';
import type { Command } from './state.js';

/** Most links and supplies that a sketch may hold, and the longest texts, as its schema says. */
export const MOST_LINKS = 24;
export const MOST_SUPPLIES = 48;
export const LONGEST = {
  title: 80,
  number: 24,
  credit: 200,
  notes: 4_000,
  linkText: 80,
  address: 500,
  supply: 200,
} as const;

/** What happens to the pieces when the card gets another size. */
export type Pieces = 'leave' | 'fit';

/** A closing line: what it says, and where it leads. */
export type Link = Sketch['links'][number];

type Words = Pick<Sketch, 'title' | 'number' | 'credit' | 'notes'>;

function changeCard(event: string, change: (sketch: Sketch) => readonly CardEdit[] | null): Command {
  return ({ sketch }, dispatch, at = 0) => {
    const edits = change(sketch);
    if (!edits) return false;
    dispatch?.({ event, edits, at });
    return true;
  };
}

/** Gives the card another size; its pieces stay where they are, or are fitted to it. Does not apply to the size it has. */
export function setCardSize({ width, height }: Size, pieces: Pieces): Command {
  return changeCard('card.size', (sketch) => {
    if ((width === sketch.card.width && height === sketch.card.height) || width < 1 || height < 1) return null;
    const card: Card = { ...sketch.card, width, height };
    return pieces === 'fit' ? fitToCard(sketch, card) : [{ do: 'card', card }];
  });
}

/** Folds the card on another side, or not at all. */
export function setFold(fold: Fold): Command {
  return changeCard('card.fold', ({ card }) => (card.fold === fold ? null : [{ do: 'card', card: { ...card, fold } }]));
}

/** Cuts the card base from another paper. Does not apply to a paper that is not there. */
export function setBase(base: string): Command {
  return changeCard('card.base', ({ card, papers }) =>
    card.base === base || !papers.some(({ id }) => id === base) ? null : [{ do: 'card', card: { ...card, base } }],
  );
}

/** Says which envelope the card is for, or none. */
export function setEnvelope(envelope: NonNullable<Card['envelope']> | null): Command {
  return changeCard('card.envelope', ({ card }) => {
    const { envelope: before, ...bare } = card;
    if (envelope === null) return before ? [{ do: 'card', card: bare }] : null;
    const { name, width, height } = envelope;
    const same = before?.name === name && before.width === width && before.height === height;
    if (same || name === '' || name.length > LONGEST.title || width < 1 || height < 1) return null;
    return [{ do: 'card', card: { ...bare, envelope: { name, width, height } } }];
  });
}

/** Changes what is stated of the sketch's words. A sketch keeps a title; texts longer than the document holds are refused. */
export function describeSketch(words: Partial<Words>): Command {
  return ({ document }, dispatch, at = 0) => {
    const stated = Object.entries(words) as [keyof Words, string][];
    const changes = stated.filter(([field, text]) => text !== (document[field] ?? ''));
    const tooLong = changes.some(([field, text]) => text.length > LONGEST[field]);
    if (changes.length === 0 || tooLong || words.title === '') return false;
    dispatch?.({ event: 'sketch.describe', edits: [{ do: 'describe', ...Object.fromEntries(changes) }], at });
    return true;
  };
}

type ListField = 'links' | 'supplies';
type List<F extends ListField> = Sketch[F];

/** A step that replaces one of the lists of the sketch; null when it does not apply. */
function changeList<F extends ListField>(field: F, change: (list: List<F>) => List<F> | null): Command {
  return ({ document }, dispatch, at = 0) => {
    const list = change(document[field]);
    if (!list) return false;
    dispatch?.({ event: `${field}.change`, edits: [{ do: 'describe', [field]: list }], at });
    return true;
  };
}

function moved<T>(list: readonly T[], from: number, to: number): readonly T[] | null {
  const item = list[from];
  if (item === undefined || to < 0 || to >= list.length || to === from) return null;
  const rest = list.filter((_, index) => index !== from);
  return [...rest.slice(0, to), item, ...rest.slice(to)];
}

/** True for a link that a sketch may hold: words, and an https address. */
export function isLink({ text, address }: Link): boolean {
  const said = text !== '' && text.length <= LONGEST.linkText;
  return said && address.length <= LONGEST.address && LINK_ADDRESS.test(address);
}

/** Adds a closing line at the end. */
export function addLink(link: Link): Command {
  return changeList('links', (links) => (isLink(link) && links.length < MOST_LINKS ? [...links, link] : null));
}

/** Puts another closing line in place of the one at `index`. */
export function changeLink(index: number, link: Link): Command {
  return changeList('links', (links) => {
    const before = links[index];
    if (!before || !isLink(link) || (before.text === link.text && before.address === link.address)) return null;
    return links.map((other, at) => (at === index ? link : other));
  });
}

/** Moves the closing line at `from` to the place `to`. */
export function moveLink(from: number, to: number): Command {
  return changeList('links', (links) => moved(links, from, to));
}

/** Takes the closing line at `index` away. */
export function removeLink(index: number): Command {
  return changeList('links', (links) => (links[index] ? links.filter((_, at) => at !== index) : null));
}

function isSupply(supply: string): boolean {
  return supply !== '' && supply.length <= LONGEST.supply;
}

/** Adds a supply at the end of the list. Does not apply to one that stands there already. */
export function addSupply(supply: string): Command {
  return changeList('supplies', (supplies) =>
    isSupply(supply) && supplies.length < MOST_SUPPLIES && !supplies.includes(supply) ? [...supplies, supply] : null,
  );
}

/** Writes the supply at `index` otherwise. */
export function changeSupply(index: number, supply: string): Command {
  return changeList('supplies', (supplies) => {
    const before = supplies[index];
    if (before === undefined || before === supply || !isSupply(supply) || supplies.includes(supply)) return null;
    return supplies.map((other, at) => (at === index ? supply : other));
  });
}

/** Moves the supply at `from` to the place `to`. */
export function moveSupply(from: number, to: number): Command {
  return changeList('supplies', (supplies) => moved(supplies, from, to));
}

/** Takes the supply at `index` away. */
export function removeSupply(index: number): Command {
  return changeList('supplies', (supplies) =>
    supplies[index] === undefined ? null : supplies.filter((_, at) => at !== index),
  );
}
