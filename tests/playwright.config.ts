import { defineConfig } from '@playwright/test';
import { CHROMIUM_ARGS, findChromium } from './run/find-chromium.mjs';

const PORT = 4174;

/** Two kinds of visitor in a real Chromium: one with a mouse at a desk, one with a finger on a phone. */
export default defineConfig({
  testDir: 'browser',
  outputDir: '../.cache/browser',
  timeout: 60_000,
  // What a worker makes takes its time on a machine with other work.
  expect: { timeout: 15_000 },
  workers: 1,
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
      // The half hour by mouse and by keys is acted at the desk; a finger acts it on the phone.
      testIgnore: /mouse\.spec|files\.spec|half-hour\.spec/,
      use: { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, deviceScaleFactor: 2 },
    },
  ],
});
