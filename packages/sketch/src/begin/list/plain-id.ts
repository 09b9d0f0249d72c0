/** Most letters of an id, with room for a number at its end. */
const LONGEST = 32;

/** An id made of the plain letters of `name`, `usual` where it has none; unlike all in `taken`, which then holds it too. */
export function plainId(name: string, usual: string, taken: Set<string>): string {
  const plain = name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, LONGEST)
    .replace(/^-+|-+$/g, '');
  const stem = plain === '' ? usual : plain;
  let id = stem;
  for (let number = 2; taken.has(id); number += 1) id = `${stem}-${number}`;
  taken.add(id);
  return id;
}
