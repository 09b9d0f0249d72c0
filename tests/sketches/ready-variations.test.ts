import { readdirSync, readFileSync } from 'node:fs';
import {
  checkSketch,
  expectSketch,
  readyVariations,
  type Sketch,
  withVariation,
  writeSketchText,
} from '@trimwell/sketch';
import { expect, test } from 'vitest';

const folder = new URL('../../demo/sketches/', import.meta.url);
const sketches = readdirSync(folder).map((name) => [name, readFileSync(new URL(name, folder), 'utf8')] as const);
const findings = (sketch: Sketch) => checkSketch(sketch).map(({ code, piece }) => `${code} ${piece}`);

test.each(sketches)(
  '%s: a ready variation gives no new finding, and is written and read with its sketch',
  (_name, text) => {
    const sketch = expectSketch(JSON.parse(text));
    const before = findings(sketch);
    const accepts = (varied: Sketch): boolean => findings(varied).every((finding) => before.includes(finding));
    const ready = readyVariations(sketch, accepts);
    expect(ready.length).toBeGreaterThan(1);
    for (const variation of ready) {
      const varied = withVariation(sketch, variation);
      expect(varied.problems).toEqual([]);
      expect(findings(varied.sketch).filter((finding) => !before.includes(finding))).toEqual([]);
    }
    const taken = {
      ...sketch,
      variations: [...sketch.variations, ...ready.map((each) => ({ ...each, id: `${each.id}-1` }))],
    };
    expect(expectSketch(JSON.parse(writeSketchText(taken)))).toEqual(taken);
    expect(readyVariations(taken, accepts).map(({ id }) => id)).toEqual([]);
  },
);
