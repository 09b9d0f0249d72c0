import { cpSync, readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';
import { embedFiles, sketchesInPages } from './embed-pages.ts';

const here = fileURLToPath(new URL('.', import.meta.url));
const pages = readdirSync(here).filter((name) => name.endsWith('.html'));

/** Pages that name a sketch by its address get it from beside them. */
const sketches = {
  name: 'sketches',
  writeBundle: ({ dir = `${here}dist` }: { dir?: string }) =>
    cpSync(`${here}sketches`, `${dir}/sketches`, { recursive: true }),
};

export default defineConfig(({ command }) => ({
  root: here,
  base: './',
  // The script that pages without a bundler load, as it is published.
  publicDir: '../packages/editor/dist/bundle',
  plugins: [sketches, sketchesInPages(`${here}sketches`), embedFiles()],
  worker: { format: 'es' },
  build: {
    target: 'es2022',
    rolldownOptions: {
      input: pages.map((name) => `${here}${name}`),
      output: { codeSplitting: { groups: [{ name: 'first-look', test: /editor\/dist\/define\.js$/ }] } },
    },
  },
  // While developing, packages come from their sources; a build takes what tsc has built.
  ...(command === 'serve'
    ? {
        resolve: { conditions: ['source', 'module', 'browser', 'development|production'] },
        ssr: {
          noExternal: [/^@trimwell/],
          resolve: { conditions: ['source', 'module', 'node', 'development|production'] },
        },
      }
    : {}),
  server: { host: '127.0.0.1' },
  preview: { host: '127.0.0.1', port: 4173 },
}));
