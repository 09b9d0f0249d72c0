import { deflateSync, strToU8 } from 'fflate';
import { SHARE_WORDS } from '../../packages/sketch/src/read/share-words.js';
import { seeded } from '../bench/measure.mjs';
import type { Hostile } from './hostile.js';

/** The check sum of a share code as FORMATS.md and the code's own comment say it: FNV-1a of 32 bits folded to 24. */
function sumOf(bytes: Uint8Array): Buffer {
  let sum = 0x811c9dc5;
  for (const byte of bytes) sum = Math.imul(sum ^ byte, 0x01000193);
  const folded = ((sum >>> 24) ^ sum) & 0xffffff;
  return Buffer.from([folded >> 16, (folded >> 8) & 255, folded & 255]);
}

/** A share code of any bytes, with the sum that belongs to it or another. */
function codeOf(bytes: Uint8Array, sum = sumOf(bytes)): string {
  const packed = deflateSync(bytes, { level: 9, dictionary: strToU8(SHARE_WORDS) });
  return `a${Buffer.from(packed).toString('base64url')}${sum.toString('base64url')}`;
}

function code(name: string, text: string, ends: Hostile['ends'] = 'refused'): Hostile {
  return { name, by: 'code', text, ends };
}

/** Codes that are broken, that unfold without end, or that carry what no sketch is. */
export function hostileCodes(sound: string): readonly Hostile[] {
  const bytes = strToU8(sound);
  const good = codeOf(bytes);
  const pick = seeded(7);
  const letters = 'abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-_';
  const random = (length: number): string =>
    Array.from({ length }, () => letters[pick(letters.length)] ?? 'a').join('');
  const mistyped = (index: number): string => {
    const place = 1 + pick(good.length - 1);
    const other = letters[(letters.indexOf(good[place] ?? 'a') + 1 + pick(62)) % 64] ?? 'a';
    return code(`mistyped ${index}`, good.slice(0, place) + other + good.slice(place + 1)).text;
  };
  return [
    code('a sound code', good, 'read'),
    code('nothing', ''),
    code('only the packing', 'a'),
    code('only a sum', 'aAAAA'),
    ...['b', 'z', 'A', '0', '_', ' ', '%', '<'].map((letter) => code(`packing ${letter}`, `${letter}${good.slice(1)}`)),
    ...[2, 5, 40, good.length - 1].map((length) => code(`cut to ${length}`, good.slice(0, length))),
    code('something behind it', `${good}AAAA`),
    code('letters that are none', `a${'%3Cscript%3E'.repeat(4)}AAAA`),
    code('markup', 'a<script>window.trimwellRan=1</script>'),
    code('another sum', codeOf(bytes, Buffer.from([1, 2, 3]))),
    code('longer than is looked at', `a${'A'.repeat(100_000)}`),
    ...Array.from({ length: 24 }, (_, index) => code(`mistyped ${index}`, mistyped(index))),
    ...Array.from({ length: 24 }, (_, index) => code(`random ${index}`, `a${random(8 + pick(400))}`)),
    code('20 MB of nothing', codeOf(new Uint8Array(20_000_000))),
    code('20 MB of spaces', codeOf(new Uint8Array(20_000_000).fill(0x20))),
    code('2 MB of spaces behind a sketch', codeOf(strToU8(sound + ' '.repeat(2_000_000)))),
    code('spaces up to the limit', codeOf(strToU8(sound + ' '.repeat(1_900_000 - sound.length))), 'read'),
    code('lists in lists up to the limit', codeOf(strToU8('['.repeat(900_000) + ']'.repeat(900_000)))),
    code('a list as long as can be', codeOf(strToU8(`[${'0,'.repeat(900_000)}0]`))),
    code('bytes that are no text', codeOf(Uint8Array.from({ length: 400 }, () => pick(256)))),
    code('a prototype', codeOf(strToU8(sound.replace('{', '{"__proto__":{"a":1},')))),
    code(
      'a script as a title',
      codeOf(strToU8(sound.replace('Fern sampler', '<script>window.trimwellRan=1<\\/script>'))),
      'read',
    ),
    code('no JSON', codeOf(strToU8('alert(1)'))),
    code('an empty text', codeOf(new Uint8Array(0))),
  ];
}
