import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';

/** The sketches of the demo, by the names of their files. */
export const DEMO_SKETCHES = ['hedgerow-wreath', 'star-window', 'tide-line'] as const;
export type DemoSketch = (typeof DEMO_SKETCHES)[number];

/** Where a sketch of the demo lies, and its text. */
export async function demoSketch(name: DemoSketch): Promise<{ readonly file: string; readonly text: string }> {
  const file = fileURLToPath(new URL(`../../demo/sketches/${name}.json`, import.meta.url));
  return { file, text: await readFile(file, 'utf8') };
}

/** A plan as JSON without what only counts the work, which may be spared by what is remembered. */
export function plainPlan(text: string): unknown {
  return JSON.parse(text, (key, value: unknown) => (key === 'work' || key === 'yield' ? undefined : value));
}
