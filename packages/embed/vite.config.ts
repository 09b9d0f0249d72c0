import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

const at = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/** Parts load nothing beside themselves, so what would load it first is left out: a kilobyte of the first look. */
const loadPlainly = {
  name: 'load-plainly',
  enforce: 'pre' as const,
  load: (id: string): string | null =>
    id.includes('vite/preload-helper') ? 'export const __vitePreload = (load) => load();' : null,
};

/**
 * One script for pages without a bundler: `trimwell-sketch.js`, beside it what it loads when it is wanted, and the page for
 * frames, `frame.html`. It is made of what tsc has built.
 */
export default defineConfig({
  root: at('.'),
  base: './',
  publicDir: 'frame',
  plugins: [loadPlainly],
  worker: { format: 'es' },
  build: {
    target: 'es2022',
    outDir: 'dist/bundle',
    manifest: 'parts.json',
    // The entry must not carry a list of what its parts preload.
    modulePreload: false,
    rolldownOptions: {
      input: { 'trimwell-sketch': at('dist/define.js'), frame: at('dist/frame.js') },
      preserveEntrySignatures: 'strict',
      output: {
        format: 'es',
        entryFileNames: '[name].js',
        chunkFileNames: 'parts/[name]-[hash].js',
        assetFileNames: 'parts/[name]-[hash][extname]',
        // One file for the first look, with all that it needs, and one for each part that comes later.
        codeSplitting: { groups: [{ name: 'first-look', test: /embed\/dist\/define\.js$/ }] },
      },
    },
  },
});
