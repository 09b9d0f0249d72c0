/**
 * `pnpm bench [name …] [--option value …]`: runs the benches named, or all, with the options. Figures are ratios to a baseline in
 * the same run.
 */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

/** The benches and their modules. */
const BENCHES = {
  plans: 'plans.mjs',
  literature: 'literature.mjs',
  real: 'real-sizes.mjs',
  warm: 'warm.mjs',
  drag: 'drag.mjs',
  handout: 'handout.mjs',
  embed: 'embed.mjs',
  checks: 'checks.mjs',
};

const words = process.argv.slice(2);
const end = words.findIndex((word) => word.startsWith('--'));
const asked = end < 0 ? words : words.slice(0, end);
const options = end < 0 ? [] : words.slice(end);
const unknown = asked.filter((name) => !Object.hasOwn(BENCHES, name));
if (unknown.length > 0) {
  console.error(`There is no bench ${unknown.join(', ')}; there are ${Object.keys(BENCHES).join(', ')}.`);
  process.exit(2);
}
if (options.length > 0 && asked.length !== 1) {
  console.error('Options belong to one bench: name it before them.');
  process.exit(2);
}

const root = fileURLToPath(new URL('../..', import.meta.url));
const built = spawnSync('npm', ['run', '-s', 'build'], { cwd: root, stdio: 'inherit' });
if (built.status !== 0) process.exit(1);

for (const name of asked.length > 0 ? asked : Object.keys(BENCHES)) {
  console.log(`\n== ${name}`);
  const { bench } = await import(new URL(BENCHES[name], import.meta.url).href);
  await bench(options);
}
