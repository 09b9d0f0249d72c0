import type { Unit } from '@trimwell/geometry';
import { LINK_ADDRESS } from '@trimwell/sketch';

/** A way on from the static part: to the handout, or to the sketch itself. */
export interface SnippetLink {
  readonly text: string;
  /** https only. */
  readonly address: string;
}

export interface StaticOptions {
  /** The unit of all sizes. Default the sketch's. */
  readonly unit?: Unit;
  /** Where the handout, or the sketch itself, is to be had. */
  readonly link?: SnippetLink;
  /**
   * Start of the ids in the drawing, `a` to `z`, digits, `-` and `_`. Default `trimwell-` and the sketch's id, so that
   * different sketches stand on one page.
   */
  readonly prefix?: string;
}

export interface LiveOptions extends StaticOptions {
  /** The folder that the files of the embed lie in: an https address, or a path of the site such as `/trimwell/`. */
  readonly files: string;
  /** The share code of the sketch, as `writeShareCode` gives it. */
  readonly code: string;
}

/** An option that cannot be used: `path` names it, `value` is what was found, `allowed` what would do. */
export class SnippetError extends RangeError {
  override readonly name = 'SnippetError';
  constructor(
    readonly path: string,
    readonly value: string,
    readonly allowed: string,
  ) {
    super(`${path} is ${value}; allowed: ${allowed}.`);
  }
}

/** Longest address of a folder, in characters. */
export const LONGEST_FILES_ADDRESS = 500;
/** Longest share code, in characters: as long as `readShareCode` looks at. */
const LONGEST_CODE = 100_000;
/** Longest value that a message repeats. */
const SHOWN = 60;

// An address that can end no attribute, and that has no place for a query or a fragment: ours come behind it.
const HTTPS_FOLDER = /^https:\/\/[^\s<>"'`?#\\]+$/;
const SITE_FOLDER = /^\.{0,2}\/(?!\/)[^\s<>"'`?#\\:]*$/;
const CODE = /^[A-Za-z0-9_-]+$/;
const PREFIX = /^[a-z][a-z0-9_-]{0,79}$/i;

/** What can be said for the folder, for messages. */
export const FILES_ALLOWED = `an https address, or a path that begins with /, ./ or ../, of at most ${LONGEST_FILES_ADDRESS} characters without spaces, quotes, ? and #`;

function shown(value: string): string {
  return JSON.stringify(value.length > SHOWN ? `${value.slice(0, SHOWN)}…` : value);
}

/** The folder's address with a slash at its end. @throws SnippetError */
export function filesFolder(files: string): string {
  const good = files.length <= LONGEST_FILES_ADDRESS && (HTTPS_FOLDER.test(files) || SITE_FOLDER.test(files));
  if (!good) throw new SnippetError('files', shown(files), FILES_ALLOWED);
  return files.endsWith('/') ? files : `${files}/`;
}

/** @throws SnippetError for a code that is none by its letters or its length */
export function checkCode(code: string): void {
  if (code.length > LONGEST_CODE || !CODE.test(code))
    throw new SnippetError('code', shown(code), `a share code: at most ${LONGEST_CODE} letters, digits, - and _`);
}

/** @throws SnippetError for an address that a page must not lead to */
export function checkLink(address: string): void {
  if (!LINK_ADDRESS.test(address))
    throw new SnippetError('link.address', shown(address), 'an https address without spaces, quotes, < and >');
}

/** @throws SnippetError for an option of the static part that cannot be used */
export function checkStatic({ link, prefix, unit }: StaticOptions): void {
  if (link) checkLink(link.address);
  if (link && link.text.trim() === '') throw new SnippetError('link.text', shown(link.text), 'some words');
  if (prefix !== undefined && !PREFIX.test(prefix))
    throw new SnippetError('prefix', shown(prefix), 'a letter, then letters, digits, - and _, at most 80 in all');
  if (unit !== undefined && unit !== 'in' && unit !== 'mm')
    throw new SnippetError('unit', shown(String(unit)), 'in, mm');
}
