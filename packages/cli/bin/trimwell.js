#!/usr/bin/env node
import { existsSync } from 'node:fs';

const built = new URL('../dist/index.js', import.meta.url);
if (existsSync(built)) {
  const { run } = await import(built.href);
  process.exitCode = await run(process.argv.slice(2));
} else {
  console.error('The command is not built yet: run `npm run setup` and `npm run build` first.');
  process.exitCode = 2;
}
