/** Types, lint, format and structure: what `pnpm check` runs and `pnpm test` runs first. */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { checkStructure } from '../architecture/check-structure.mjs';
import { manifestIsCurrent } from './manifest.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const bin = (name) => fileURLToPath(new URL(`../../node_modules/.bin/${name}`, import.meta.url));

const PROJECTS = ['geometry', 'sketch', 'handout', 'editor', 'embed', 'cli'].map((name) => `packages/${name}`);

function run(title, command, args) {
  console.log(`-- ${title}`);
  return spawnSync(command, args, { cwd: root, stdio: 'inherit' }).status === 0;
}

const structure = checkStructure(root);
for (const line of structure) console.error(line);
const good = [
  run('types of the packages', bin('tsc'), ['-b', ...PROJECTS]),
  run('types of the demo and the tests', bin('tsc'), ['-b', 'demo', 'tests']),
  run('lint and format', bin('biome'), ['check', '--error-on-warnings']),
  structure.length === 0,
  manifestIsCurrent(root),
];
process.exitCode = good.every(Boolean) ? 0 : 1;
