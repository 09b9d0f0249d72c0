import { defineConfig } from '@playwright/test';
import { DESK } from './browser/desk-only.js';
import { CHROMIUM_ARGS, findChromium } from './run/find-chromium.mjs';

const PORT = 4174;

/** Two kinds of visitor in a real Chromium: one with a mouse at a desk, one with a finger on a phone. */
export default defineConfig({
  testDir: 'browser',
  outputDir: '../.cache/browser',
  timeout: 60_000,
  // What a worker makes takes its time on a machine with other work.
  expect: { timeout: 15_000 },
  // Each test has a page and a storage of its own.
  workers: 2,
  fullyParallel: true,
  forbidOnly: true,
  reporter: [['list'], ['json']],
  webServer: {
    command: `node ../node_modules/vite/bin/vite.js preview ../demo --port ${PORT} --strictPort`,
    url: `http://127.0.0.1:${PORT}/`,
    reuseExistingServer: false,
  },
  use: {
    baseURL: `http://127.0.0.1:${PORT}/`,
    launchOptions: {
      executablePath: findChromium() ?? '',
      args: CHROMIUM_ARGS,
    },
    reducedMotion: 'reduce',
  },
  projects: [
    { name: 'desk', testIgnore: /touch\.spec/, use: { viewport: { width: 1280, height: 800 } } },
    {
      name: 'phone',
      // What neither the width nor the finger changes is tried at the desk alone: the mouse, the keys, other people's pages.
      testIgnore: /mouse\.spec|files\.spec|half-hour\.spec|keyboard\.spec|pages\.spec|embed-hostile\.spec/,
      grepInvert: new RegExp(DESK),
      use: { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, deviceScaleFactor: 2 },
    },
  ],
});
