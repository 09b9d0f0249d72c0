/**
 * What a page loads before it sees the first of an element: the entry of its bundle and all that the entry imports at once,
 * gzipped. `tests/sizes/sizes.json` holds the figures: `most` is the promise, `now` what the last change left, in bytes. A
 * bundle that grows beyond `now` fails until somebody writes the new figure down; so does one that shrank by more than a
 * fiftieth, so that the figure stays worth reading.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { posix } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';

const root = fileURLToPath(new URL('../..', import.meta.url));
const wanted = JSON.parse(readFileSync(new URL('../sizes/sizes.json', import.meta.url), 'utf8'));

/** A part that comes later is named from here on, in bytes. */
const HEAVY = 5000;

/** The files that `entry` needs at once, itself among them. */
export function firstFiles(parts, entry, seen = new Set()) {
  const part = parts[entry];
  if (!part) throw new Error(`the bundle has no ${entry}`);
  if (seen.has(part.file)) return seen;
  seen.add(part.file);
  for (const next of part.imports ?? []) firstFiles(parts, next, seen);
  return seen;
}

/** An import at the head of a bundled file: what it names is loaded before the file runs. */
const IMPORT = /(?:^|;)import(?:[^"'();]*from)?["'](\.[^"']+)["']/g;

/** A worker's file and all that it imports at once, from `folder`; no list of parts names them. */
function workerFiles(folder, file, seen = new Set()) {
  if (seen.has(file)) return seen;
  seen.add(file);
  const text = readFileSync(`${root}${folder}/${file}`, 'utf8');
  for (const [, next] of text.matchAll(IMPORT)) workerFiles(folder, posix.join(posix.dirname(file), next), seen);
  return seen;
}

/** The files of `entry`: of a module by its path, or of a worker by its folder and name without its hash. */
function filesOf(folder, entry) {
  if (entry.endsWith('.js')) return firstFiles(JSON.parse(readFileSync(`${root}${folder}/parts.json`, 'utf8')), entry);
  const [at, name] = entry.split('/');
  const file = readdirSync(`${root}${folder}/${at}`).find(
    (each) => each.startsWith(`${name}-`) && each.endsWith('.js'),
  );
  if (!file) throw new Error(`${folder} has no ${entry}`);
  return workerFiles(folder, `${at}/${file}`);
}

/** The bytes of `entry` and of all that it needs at once, gzipped. */
export function firstLoad(folder, entry) {
  const files = [...filesOf(folder, entry)];
  return files.reduce((sum, file) => sum + gzipSync(readFileSync(`${root}${folder}/${file}`), { level: 9 }).length, 0);
}

for (const [folder, entries] of Object.entries(wanted)) {
  for (const [entry, { most, now }] of Object.entries(entries)) {
    const bytes = firstLoad(folder, entry);
    const wrong =
      bytes > most
        ? `more than the promised ${most}`
        : bytes > now
          ? `more than the ${now} written down`
          : bytes < now * 0.98
            ? `less than the ${now} written down: write the new figure`
            : null;
    console.log(`${folder} ${entry}: ${bytes} bytes gzipped at first${wrong ? `, ${wrong}` : ''}`);
    if (wrong) process.exitCode = 1;
  }
}

/** What comes later, each part when it is first wanted: the heaviest ones, in kB gzipped. */
for (const [folder, entries] of Object.entries(wanted)) {
  const first = new Set(Object.keys(entries).flatMap((entry) => [...filesOf(folder, entry)]));
  // Workers and what they load lie in a folder of their own.
  const later = readdirSync(`${root}${folder}`, { recursive: true })
    .filter((file) => file.endsWith('.js') && !first.has(file))
    .map((file) => ({ file, bytes: gzipSync(readFileSync(`${root}${folder}/${file}`), { level: 9 }).length }))
    .filter(({ bytes }) => bytes >= HEAVY)
    .sort((a, b) => b.bytes - a.bytes);
  const words = later.map(
    ({ file, bytes }) => `${file.replace(/^(parts|assets)\/|-[\w-]{8}\.js$/g, '')} ${(bytes / 1000).toFixed(0)}`,
  );
  console.log(`${folder} later, in kB gzipped: ${words.join(', ')}`);
}
