/** The programs that read what we write, so that no file is judged by the library that wrote it. */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

/** Each program, and the Debian package that it comes from. */
const PACKAGES = {
  qpdf: 'qpdf',
  pdfinfo: 'poppler-utils',
  pdffonts: 'poppler-utils',
  pdftotext: 'poppler-utils',
  pdftoppm: 'poppler-utils',
  'rsvg-convert': 'librsvg2-bin',
};

function onPath(name) {
  const folders = (process.env.PATH ?? '').split(delimiter);
  return folders.map((folder) => join(folder, name)).find((path) => existsSync(path)) ?? null;
}

function howToGet(what, packages) {
  return (
    `The tests read what was written with ${what}, and it is not here. Debian: apt-get install ${packages}; ` +
    'Fedora: dnf install qpdf poppler-utils librsvg2-tools; macOS: brew install qpdf poppler librsvg.'
  );
}

/** The path of a reading program by its name. @throws Error that says how to get it */
export function findReader(name) {
  const found = onPath(name);
  if (!found) throw new Error(howToGet(name, PACKAGES[name] ?? name));
  return found;
}

/** The Debian packages of the readers that are not here. */
function missingPackages() {
  const missing = Object.entries(PACKAGES).filter(([name]) => !onPath(name));
  return [...new Set(missing.map(([, from]) => from))];
}

/** Installs the readers that are not here where that needs no password; throws saying how to get them otherwise. */
export function ensureReaders() {
  const missing = missingPackages();
  if (missing.length === 0) return;
  if (process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    console.log(`Not here: ${missing.join(', ')}. Installing the system's packages.`);
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
    for (const args of [
      ['update', '-q'],
      ['install', '-y', '-q', '--no-install-recommends', ...missing],
    ])
      spawnSync('apt-get', args, { stdio: 'inherit', env });
  }
  const still = missingPackages();
  if (still.length > 0) throw new Error(howToGet(still.join(', '), still.join(' ')));
}
