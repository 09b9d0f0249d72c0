import type { Length } from '@trimwell/geometry';
import { ticks } from '@trimwell/geometry';
import { type Problem, type Punch, problemAt, readEdit, SketchError, writeEdit } from '@trimwell/sketch';
import * as z from 'zod/mini';
import { inDatabase } from './database.js';

/** The designer's own hand tools, for every sketch: radii of corner rounders, and border punches. */
export interface Drawer {
  readonly radii: readonly Length[];
  readonly punches: readonly Punch[];
}

/** A drawer with nothing in it. */
export const EMPTY_DRAWER: Drawer = { radii: [], punches: [] };

const KEY = 'own tools';
/** Longest radius: that of a quarter circle as wide as a large sheet. */
const LONGEST_RADIUS = 650_240;

// A punch is stored as the edit that brings it into a sketch, so that one schema reads both.
const schema = z.strictObject({
  radii: z.array(z.int().check(z.minimum(1), z.maximum(LONGEST_RADIUS))).check(z.maxLength(48)),
  punches: z.array(z.unknown()).check(z.maxLength(48)),
});

function readPunches(stored: readonly unknown[]): Punch[] {
  return stored.map((document, index) => {
    const reading = readEdit(document, 'mm');
    if (!reading.ok) throw new SketchError(reading.problems);
    if (reading.edit.do === 'set-punch') return reading.edit.punch;
    throw new SketchError([problemAt('not-a-punch', ['punches', index, 'do'], reading.edit.do, 'only "set-punch"')]);
  });
}

/** The drawer from a value of unknown shape. @throws SketchError with what is wrong */
export function readDrawerValue(value: unknown): Drawer {
  const read = z.safeParse(schema, value);
  if (!read.success) {
    const problems = read.error.issues.map(
      ({ code, path, message }): Problem =>
        problemAt(code.replaceAll('_', '-'), ['drawer', ...path], valueAt(value, path), message ?? 'another value'),
    );
    throw new SketchError(problems);
  }
  return { radii: read.data.radii.map(ticks), punches: readPunches(read.data.punches) };
}

function valueAt(value: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (at, step) => (typeof at === 'object' && at !== null ? Reflect.get(at, step) : undefined),
    value,
  );
}

function drawerValue({ radii, punches }: Drawer): unknown {
  return { radii: [...radii], punches: punches.map((punch) => writeEdit({ do: 'set-punch', punch }, 'mm')) };
}

/** The designer's own tools; an empty drawer before the first. @throws KeepError @throws SketchError when what is stored is no drawer */
export async function readDrawer(): Promise<Drawer> {
  const stored = await inDatabase((database) => database.get('drawer', KEY));
  return stored === undefined ? EMPTY_DRAWER : readDrawerValue(stored);
}

/** Keeps the designer's own tools. @throws SketchError when it is no sound drawer: nothing is stored then. @throws KeepError */
export async function writeDrawer(drawer: Drawer): Promise<void> {
  const value = drawerValue(drawer);
  readDrawerValue(value);
  await inDatabase((database) => database.put('drawer', value, KEY));
}
