/** `pnpm bench [name …]`: runs the benches named, or all. Figures are ratios to a baseline in the same run. */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const BENCHES = ['plans', 'drag'];
const asked = process.argv.slice(2);
const unknown = asked.filter((name) => !BENCHES.includes(name));
if (unknown.length > 0) {
  console.error(`There is no bench ${unknown.join(', ')}; there are ${BENCHES.join(', ')}.`);
  process.exit(2);
}

const root = fileURLToPath(new URL('../..', import.meta.url));
const built = spawnSync('npm', ['run', '-s', 'build'], { cwd: root, stdio: 'inherit' });
if (built.status !== 0) process.exit(1);

for (const name of asked.length > 0 ? asked : BENCHES) {
  console.log(`\n== ${name}`);
  const { bench } = await import(new URL(`${name}.mjs`, import.meta.url).href);
  await bench();
}
