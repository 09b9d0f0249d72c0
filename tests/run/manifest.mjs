/** The custom elements manifest says what the source says: it is made anew and compared. */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';

const PACKAGES = ['packages/editor'];

/** True when the manifest of every package of elements is what the analyzer makes of its source now. */
export function manifestIsCurrent(root) {
  return PACKAGES.every((folder) => {
    console.log(`-- manifest of ${folder}`);
    // The analyzer takes paths from the package outwards only, so the fresh one goes beside the build.
    const { status } = spawnSync(
      `${root}node_modules/.bin/cem`,
      ['analyze', '--quiet', '--config', 'custom-elements-manifest.config.mjs', '--outdir', 'dist'],
      { cwd: `${root}${folder}`, stdio: 'inherit' },
    );
    const read = (path) => JSON.stringify(JSON.parse(readFileSync(`${root}${folder}/${path}`, 'utf8')));
    const current = status === 0 && read('dist/custom-elements.json') === read('custom-elements.json');
    if (!current) console.error(`${folder}/custom-elements.json is not what its source says: run \`pnpm manifest\``);
    return current;
  });
}
