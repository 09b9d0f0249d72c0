import { Buffer } from 'node:buffer';
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { planCuts } from '@trimwell/geometry';
import { layOutHandout } from '@trimwell/handout';
import { loadTextMeasure, writePdf } from '@trimwell/handout/pdf';
import { batchRecipe, expectSketch, planBatch } from '@trimwell/sketch';
import { against, baseline, percentile, row } from './measure.mjs';

const SKETCHES = fileURLToPath(new URL('../../demo/sketches/', import.meta.url));
const CREATED = new Date('2026-01-02T03:04:05Z');
const ROUNDS = 5;

/** The middle of several timings of `work`, in milliseconds. */
async function middle(work) {
  const times = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    const start = performance.now();
    await work();
    times.push(performance.now() - start);
  }
  return percentile(times, 0.5);
}

/** Time and size of the handouts of the demo's sketches: laid out, written, encrypted. */
export async function bench() {
  const base = baseline();
  const start = performance.now();
  const measure = await loadTextMeasure();
  row('fonts, loaded for the first time', against(performance.now() - start, base));
  for (const file of readdirSync(SKETCHES).filter((name) => name.endsWith('.json'))) {
    const sketch = expectSketch(JSON.parse(readFileSync(`${SKETCHES}${file}`, 'utf8')));
    const batch = planBatch(batchRecipe(sketch), 12, (job) => planCuts(job));
    const layOut = () =>
      layOutHandout(sketch, batch, { paper: 'a4', language: 'en', templates: true, measure, date: '2026-01-02' });
    const pages = layOut();
    const first = performance.now();
    const plain = await writePdf(pages, { created: CREATED });
    const firstTime = performance.now() - first;
    const options = { created: CREATED, password: 'a fern in the dew' };
    const secret = await writePdf(pages, options);
    const same = Buffer.from(plain).equals(Buffer.from(await writePdf(pages, { created: CREATED })));
    if (!same) throw new Error(`${file}: the same pages gave other bytes.`);
    const name = `${file.replace('.json', '')}, ${pages.pages.length} pages`;
    row(`${name}, laid out`, against(await middle(async () => layOut()), base));
    row(`${name}, written first`, against(firstTime, base));
    row(`${name}, written again`, against(await middle(() => writePdf(pages, { created: CREATED })), base));
    row(`${name}, encrypted`, against(await middle(() => writePdf(pages, options)), base));
    row(`${name}, size`, `${(plain.length / 1000).toFixed(0)} kB`, `encrypted ${(secret.length / 1000).toFixed(0)} kB`);
  }
}
