import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { findReader } from '../run/find-readers.mjs';

/** What a reading program answered. */
export interface Answer {
  readonly status: number | null;
  readonly out: string;
  readonly bytes: Buffer;
  readonly error: string;
}

/** Runs a reading program on `bytes`; `FILE` among the arguments stands for the file. */
export function read(program: string, bytes: Uint8Array | string, args: readonly string[]): Answer {
  const folder = mkdtempSync(join(tmpdir(), 'trimwell-'));
  const file = join(folder, 'file');
  try {
    writeFileSync(file, bytes);
    const words = args.map((word) => (word === 'FILE' ? file : word));
    const { status, stdout, stderr } = spawnSync(findReader(program), words, { maxBuffer: 1 << 28 });
    return { status, out: stdout.toString('utf8'), bytes: stdout, error: stderr.toString('utf8') };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The lines `Name: value` of pdfinfo. */
export function facts(bytes: Uint8Array): Readonly<Record<string, string>> {
  const lines = read('pdfinfo', bytes, ['FILE']).out.split('\n');
  return Object.fromEntries(lines.map((line) => [line.slice(0, line.indexOf(':')), line.replace(/^[^:]*:\s*/, '')]));
}
