import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

const at = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/**
 * One script for pages without a bundler: `trimwell-editor.js`, and beside it what it loads when it is wanted, all from the
 * same folder. It is made of what tsc has built.
 */
export default defineConfig({
  root: at('.'),
  base: './',
  publicDir: false,
  worker: { format: 'es' },
  build: {
    target: 'es2022',
    outDir: 'dist/bundle',
    manifest: 'parts.json',
    // The entry must not carry a second copy of what its parts preload.
    modulePreload: false,
    rolldownOptions: {
      input: { 'trimwell-editor': at('dist/define.js') },
      preserveEntrySignatures: 'strict',
      output: {
        format: 'es',
        entryFileNames: '[name].js',
        chunkFileNames: 'parts/[name]-[hash].js',
        assetFileNames: 'parts/[name]-[hash][extname]',
        // One file for the first look, with all that it needs, and one for each part that comes later.
        codeSplitting: { groups: [{ name: 'first-look', test: /editor\/dist\/define\.js$/ }] },
      },
    },
  },
});
