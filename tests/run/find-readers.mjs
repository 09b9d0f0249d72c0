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

/** The library that reads DXF, in Python, and the Debian package that it comes from. */
const DXF_READER = { module: 'ezdxf', from: 'python3-ezdxf' };

function allOnPath(name) {
  const folders = (process.env.PATH ?? '').split(delimiter);
  return folders.map((folder) => join(folder, name)).filter((path) => existsSync(path));
}

function onPath(name) {
  return allOnPath(name)[0] ?? null;
}

/** The first Python that has the DXF reader: the one that comes first on the path need not be the system's own. */
function pythonWithDxf() {
  const has = (path) => spawnSync(path, ['-c', `import ${DXF_READER.module}`], { stdio: 'ignore' }).status === 0;
  return [...allOnPath('python3'), '/usr/bin/python3'].find((path) => existsSync(path) && has(path)) ?? null;
}

function howToGet(what, packages) {
  return (
    `The tests read what was written with ${what}, and it is not here. Debian: apt-get install ${packages}; ` +
    'Fedora: dnf install qpdf poppler-utils librsvg2-tools; macOS: brew install qpdf poppler librsvg. ' +
    `Elsewhere the DXF reader is Python's: pip install ${DXF_READER.module}.`
  );
}

/** The path of a reading program by its name. @throws Error that says how to get it */
export function findReader(name) {
  const found = onPath(name);
  if (!found) throw new Error(howToGet(name, PACKAGES[name] ?? name));
  return found;
}

/** The path of a Python that reads DXF. @throws Error that says how to get it */
export function findDxfPython() {
  const found = pythonWithDxf();
  if (!found) throw new Error(howToGet(DXF_READER.module, DXF_READER.from));
  return found;
}

/** The Debian packages of the readers that are not here. */
function missingPackages() {
  const missing = Object.entries(PACKAGES).filter(([name]) => !onPath(name));
  const dxf = pythonWithDxf() ? [] : [DXF_READER.from];
  return [...new Set([...missing.map(([, from]) => from), ...dxf])];
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
