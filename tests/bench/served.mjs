import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const PORT = 4175;

/** Serves the built demo while `work` runs, which is given its address. */
export async function served(work) {
  const vite = fileURLToPath(new URL('../../node_modules/vite/bin/vite.js', import.meta.url));
  const demo = fileURLToPath(new URL('../../demo', import.meta.url));
  const server = spawn(process.execPath, [vite, 'preview', demo, '--port', String(PORT), '--strictPort'], {
    stdio: 'ignore',
  });
  try {
    for (let tries = 0; tries < 100; tries += 1) {
      const answer = await fetch(`http://127.0.0.1:${PORT}/`).catch(() => null);
      if (answer?.ok) break;
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
    return await work(`http://127.0.0.1:${PORT}/`);
  } finally {
    server.kill();
  }
}
