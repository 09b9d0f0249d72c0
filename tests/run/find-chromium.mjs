import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'microsoft-edge'];
const MAC = [
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
];

/** How the browser is started: as any user, and without reaching for the network. */
export const CHROMIUM_ARGS = [
  '--no-sandbox',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** The path of a Chromium-based browser that is there: $CHROMIUM, on PATH, in the usual place, or null. */
export function findChromium() {
  const named = process.env.CHROMIUM;
  if (named) return existsSync(named) ? named : null;
  const folders = (process.env.PATH ?? '').split(delimiter);
  const onPath = NAMES.flatMap((name) => folders.map((folder) => join(folder, name)));
  return [...onPath, ...MAC].find((path) => existsSync(path)) ?? null;
}

function run(command, args) {
  return (
    spawnSync(command, args, { stdio: 'inherit', env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } })
      .status === 0
  );
}

/** Finds a Chromium, or installs one the system's way where that needs no password; throws saying how otherwise. */
export function ensureChromium() {
  const found = findChromium();
  if (found) return found;
  const root = process.getuid?.() === 0;
  if (root && existsSync('/usr/bin/apt-get')) {
    console.log('No Chromium here: installing the system package.');
    run('apt-get', ['update', '-q']);
    run('apt-get', ['install', '-y', '-q', '--no-install-recommends', 'chromium']);
  }
  const installed = findChromium();
  if (installed) return installed;
  throw new Error(
    'The browser tests need Chromium and found none. Install it (Debian: apt-get install chromium; Fedora: dnf install ' +
      'chromium; macOS: brew install --cask chromium), or set CHROMIUM to the path of a Chromium-based browser.',
  );
}
