import { Buffer } from 'node:buffer';
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { planCuts } from '@trimwell/geometry';
import { layOutHandout } from '@trimwell/handout';
import { cutFiles, zipCutFiles } from '@trimwell/handout/cut-files';
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

/** Time and size of the files for a cutting machine: each format by sheet and by piece, and the zip of it. */
async function benchCutFiles(name, sketch, base) {
  for (const format of ['svg', 'dxf']) {
    for (const each of ['sheet', 'piece']) {
      const make = () => cutFiles(sketch, { format, each, cards: 12 });
      const made = make();
      const zip = zipCutFiles(made);
      if (!Buffer.from(zip).equals(Buffer.from(zipCutFiles(make())))) throw new Error(`${name}: other bytes.`);
      const bytes = made.files.reduce((sum, { text }) => sum + Buffer.byteLength(text), 0);
      const what = `${name}, ${format} by ${each}`;
      row(`${what}, ${made.files.length} files`, against(await middle(async () => make()), base));
      row(`${what}, zipped`, against(await middle(async () => zipCutFiles(made)), base));
      row(`${what}, size`, `${(bytes / 1000).toFixed(0)} kB`, `zip ${(zip.length / 1000).toFixed(0)} kB`);
    }
  }
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
    await benchCutFiles(file.replace('.json', ''), sketch, base);
  }
}
