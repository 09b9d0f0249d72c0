/**
 * Everything that CI runs, in order, then what failed and one plain line at the end: `N passed, N failed`. Each stage runs
 * even when an earlier one failed, so that one run tells all; the exit code is 0 only when nothing failed.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { browserFailures, unitFailures } from './failures.mjs';
import { ensureChromium } from './find-chromium.mjs';
import { ensureReaders } from './find-readers.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const reports = new URL('../../.cache/reports/', import.meta.url);
const bin = (name) => fileURLToPath(new URL(`../../node_modules/.bin/${name}`, import.meta.url));
const report = (name) => fileURLToPath(new URL(name, reports));

let passed = 0;
let failed = 0;
const failures = [];

function stage(title, command, args, env = {}) {
  const start = performance.now();
  console.log(`\n== ${title}`);
  const { status } = spawnSync(command, args, { cwd: root, stdio: 'inherit', env: { ...process.env, ...env } });
  console.log(
    `== ${title}: ${status === 0 ? 'passed' : 'FAILED'} in ${((performance.now() - start) / 1000).toFixed(1)} s`,
  );
  return status === 0;
}

/** A stage without counts of its own counts as one test. */
function single(title, command, args) {
  if (stage(title, command, args)) passed += 1;
  else {
    failed += 1;
    failures.push(title);
  }
}

/** A stage whose runner writes a JSON report: its own counts are added; a run without tests has failed. */
function counted(title, command, args, file, { count, told, env }) {
  const good = stage(title, command, args, env);
  const json = existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : null;
  const counts = json ? count(json) : { passed: 0, failed: 0 };
  passed += counts.passed;
  failed += counts.failed;
  if (json) failures.push(...told(json));
  if (counts.passed + counts.failed === 0 || (!good && counts.failed === 0)) {
    failed += 1;
    failures.push(`${title}: the run itself`);
  }
}

rmSync(reports, { recursive: true, force: true });
mkdirSync(reports, { recursive: true });

single('types, lint and structure', process.execPath, [fileURLToPath(new URL('check.mjs', import.meta.url))]);
ensureReaders();
counted(
  'unit tests',
  bin('vitest'),
  [
    'run',
    '--config',
    'tests/vitest.config.ts',
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${report('unit.json')}`,
  ],
  report('unit.json'),
  {
    count: (json) => ({ passed: json.numPassedTests, failed: json.numFailedTests + json.numPendingTests }),
    told: unitFailures,
  },
);
single('editor bundle', bin('vite'), ['build', 'packages/editor', '--logLevel', 'warn']);
single('embed bundle', bin('vite'), ['build', 'packages/embed', '--logLevel', 'warn']);
single('sizes', process.execPath, [fileURLToPath(new URL('sizes.mjs', import.meta.url))]);
single('demo build', bin('vite'), ['build', 'demo', '--logLevel', 'warn']);
counted(
  'browser tests',
  bin('playwright'),
  ['test', '--config', 'tests/playwright.config.ts'],
  report('browser.json'),
  {
    count: ({ stats }) => ({ passed: stats.expected, failed: stats.unexpected + stats.flaky + stats.skipped }),
    told: browserFailures,
    env: { CHROMIUM: ensureChromium(), PLAYWRIGHT_JSON_OUTPUT_NAME: report('browser.json') },
  },
);

if (failures.length > 0) console.log(`\n== what failed\n${failures.join('\n')}`);

console.log(`\n${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
