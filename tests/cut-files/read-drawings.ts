import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { findDxfPython } from '../run/find-readers.mjs';

const SCRIPT = fileURLToPath(new URL('read_drawings.py', import.meta.url));

/** What ezdxf finds in a drawing; boxes are left, bottom, right, top in the drawing's unit. */
export interface ReadDrawing {
  readonly version: string;
  readonly errors: readonly string[];
  readonly units: number;
  readonly measurement: number;
  readonly limits: readonly number[];
  readonly layers: Readonly<Record<string, string>>;
  readonly entities: readonly {
    readonly type: string;
    readonly layer: string;
    readonly closed?: boolean;
    readonly vertices?: number;
    readonly arcs?: number;
    /** Within a closed line, negative when it is walked clockwise. */
    readonly area?: number;
    readonly box: readonly [number, number, number, number];
  }[];
}

/** What an XML parser finds in an SVG: the tags of each group's children by the group's id. */
export interface ReadXml {
  readonly tag: string;
  readonly width: string;
  readonly title: string;
  readonly groups: Readonly<Record<string, readonly string[]>>;
}

export interface ReadZip {
  readonly broken: string | null;
  readonly dates: readonly string[];
  readonly texts: Readonly<Record<string, string>>;
}

/** Reads many drawings (`*.dxf`, `*.svg`) and zips (`*.zip`) by their names in one Python process, which takes a second to start. */
export function readDrawings(files: ReadonlyMap<string, string | Uint8Array>): {
  readonly drawings: Readonly<Record<string, ReadDrawing>>;
  readonly svgs: Readonly<Record<string, ReadXml>>;
  readonly zips: Readonly<Record<string, ReadZip>>;
} {
  const folder = mkdtempSync(join(tmpdir(), 'trimwell-'));
  try {
    for (const [name, content] of files) writeFileSync(join(folder, name), content);
    const { status, stdout, stderr } = spawnSync(findDxfPython(), [SCRIPT, folder], { maxBuffer: 1 << 28 });
    if (status !== 0) throw new Error(stderr.toString('utf8'));
    return JSON.parse(stdout.toString('utf8'));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
