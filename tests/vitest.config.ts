import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/** Tests run from source: packages' `source` export condition points at src, so no build is needed. */
const conditions = ['source', 'module', 'browser', 'development|production'];
const setupFiles = [fileURLToPath(new URL('kit/seed.ts', import.meta.url))];
const shared = {
  resolve: { conditions },
  ssr: { resolve: { conditions: ['source', 'module', 'node', 'development|production'] } },
};

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    // One for each core: by itself the runner leaves one of two idle.
    maxWorkers: '100%',
    projects: [
      {
        ...shared,
        test: {
          name: 'node',
          environment: 'node',
          // Loading the same modules anew for each file took longer than the tests; what holds something gets them fresh.
          isolate: false,
          include: ['packages/*/src/**/*.test.ts', 'tests/**/*.test.ts'],
          exclude: ['**/node_modules/**', 'packages/{editor,embed}/src/view/**', 'tests/browser/**'],
          testTimeout: 60_000,
          setupFiles,
        },
      },
      {
        ...shared,
        test: {
          name: 'jsdom',
          environment: 'jsdom',
          include: ['packages/{editor,embed}/src/view/**/*.test.ts'],
          testTimeout: 30_000,
          setupFiles,
        },
      },
    ],
  },
});
