/**
 * Imports run one way: between packages along ORDER, and inside a package along LAYERS. Packages without a DOM say so
 * in their tsconfig. The top level holds what it should and nothing else.
 */
import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';

/** Each package may import those named, by their published names. */
export const ORDER = {
  geometry: [],
  sketch: ['geometry'],
  handout: ['sketch', 'geometry'],
  editor: ['handout', 'sketch', 'geometry'],
  embed: ['handout', 'sketch', 'geometry'],
  cli: ['handout', 'sketch', 'geometry'],
};

/** Each folder of a package may import those named, and itself; its tests and files at the top of `src` may import all. */
export const LAYERS = {
  geometry: {
    length: [],
    rect: ['length'],
    outline: ['length', 'rect'],
    stack: ['length', 'rect', 'outline'],
    regions: ['stack', 'length', 'rect', 'outline'],
    cut: ['length', 'rect'],
    steps: ['cut', 'length', 'rect'],
    sheet: ['cut', 'length', 'rect'],
    plan: ['sheet', 'steps', 'cut', 'length', 'rect'],
    nest: ['plan', 'sheet', 'cut', 'length', 'rect'],
  },
  sketch: {
    model: [],
    read: ['model'],
    edit: ['read', 'model'],
    begin: ['edit', 'read', 'model'],
    batch: ['edit', 'read', 'model'],
    check: ['batch', 'edit', 'read', 'model'],
    post: ['read', 'model'],
    assembly: ['post', 'check', 'batch', 'begin', 'edit', 'read', 'model'],
  },
  handout: { drawing: [], draw: ['drawing'], page: ['draw', 'drawing'], write: ['page', 'draw', 'drawing'] },
  editor: { state: [], session: ['state'], keeping: ['session', 'state'], view: ['keeping', 'session', 'state'] },
  embed: { state: [], plan: ['state'], make: ['state'], view: ['make', 'plan', 'state'] },
  cli: { command: [] },
};

/** Our packages that a library of the world may be used in. */
export const LIBRARIES = {
  geometry: ['clipper2-ts'],
  sketch: ['zod', 'fflate'],
  handout: ['@cantoo/pdf-lib', '@tarikjabiri/dxf', 'fontkit', 'fflate'],
  editor: ['lit', '@svgdotjs/svg.js', 'interactjs', 'idb', 'zod'],
  embed: ['zod'],
  cli: ['@resvg/resvg-wasm'],
};

const TOP_LEVEL = [
  'packages',
  'demo',
  'tests',
  'package.json',
  'pnpm-workspace.yaml',
  'pnpm-lock.yaml',
  'tsconfig.base.json',
  'README.md',
  'DEVELOPERS.md',
  'LICENSE',
];
const NO_DOM = [
  'packages/geometry/tsconfig.json',
  'packages/sketch/tsconfig.json',
  'packages/handout/tsconfig.json',
  'packages/editor/tsconfig.state.json',
];
const IMPORT =
  /(?:^|\n)\s*(?:import|export)\s(?:[^'";]*?from\s*)?['"]([^'"]+)['"]|import\(\s*['"]([^'"]+)['"]\s*\)|new URL\(\s*['"](\.[^'"]+)['"]/g;

/** Every module that `source` imports or exports from, static or not. */
export function importsOf(source) {
  return [...source.matchAll(IMPORT)].map((found) => found[1] ?? found[2] ?? found[3]);
}

/** The sentences that are wrong about `source`, the text of packages/<name>/src/<path>. */
export function checkFile(name, path, source) {
  const test = path.endsWith('.test.ts');
  const layer = path.includes('/') ? path.split('/', 1)[0] : null;
  const layers = LAYERS[name];
  const file = `packages/${name}/src/${path}`;
  if (layer && layers && Object.keys(layers).length > 0 && !(layer in layers))
    return [`${file}: no layer is called ${layer}`];
  return importsOf(source).flatMap((target) => {
    if (target.startsWith('.')) {
      const inside = normalize(join(dirname(path), target));
      if (test && /^(\.\.\/)+tests\/(kit|data)\//.test(target)) return [];
      // Fonts stand beside the sources, so that a built file and its source find them by the same way.
      if (inside.startsWith('../fonts/')) return [];
      if (inside.startsWith('..')) return [`${file}: imports ${target}, outside its package`];
      const other = inside.includes('/') ? inside.split('/', 1)[0] : null;
      if (layer && other && other !== layer && !test && !layers[layer].includes(other))
        return [`${file}: ${layer} must not import ${other}`];
      if (layer && !other && !test) return [`${file}: must not import ${target} at the top of the package`];
      return [];
    }
    const ours = /^@trimwell\/([^/]+)/.exec(target)?.[1];
    if (ours) return ORDER[name].includes(ours) ? [] : [`${file}: ${name} must not import ${ours}`];
    if (target.startsWith('node:'))
      return name === 'cli' || test ? [] : [`${file}: only the command line may import ${target}`];
    const known = LIBRARIES[name].some((library) => target === library || target.startsWith(`${library}/`));
    const testing = test || path.includes('expect-');
    return known ||
      (testing && ['vitest', 'fast-check', 'jsdom', 'fake-indexeddb', 'fake-indexeddb/auto'].includes(target))
      ? []
      : [`${file}: ${name} must not import ${target}`];
  });
}

/** Every sentence about the structure of the tree at `root` that is wrong; empty when it stands. */
export function checkStructure(root) {
  const read = (path) => readFileSync(join(root, path), 'utf8');
  const files = execFileSync('git', ['ls-files', '--cached', '--others', '--exclude-standard'], {
    cwd: root,
    encoding: 'utf8',
  })
    .split('\n')
    // What was just taken away is still in the list until that is committed.
    .filter((path) => path !== '' && existsSync(join(root, path)));
  const strangers = [...new Set(files.map((path) => path.split('/', 1)[0]))].filter(
    (top) => !top.startsWith('.') && !TOP_LEVEL.includes(top),
  );
  const sources = files.flatMap((path) => {
    const [, name, inside] = /^packages\/([^/]+)\/src\/(.+\.ts)$/.exec(path) ?? [];
    if (!name || !inside) return [];
    return name in ORDER ? checkFile(name, inside, read(path)) : [`${path}: no package is called ${name}`];
  });
  const dom = NO_DOM.filter((path) => /"DOM/.test(read(path))).map((path) => `${path}: must not have the DOM's types`);
  const hosts =
    files.includes('pnpm-lock.yaml') && /https?:\/\//.test(read('pnpm-lock.yaml'))
      ? ['pnpm-lock.yaml: names a host']
      : [];
  return [...strangers.map((top) => `${top}: does not belong at the top level`), ...sources, ...dom, ...hosts];
}
