import { readFile } from 'node:fs/promises';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from '@playwright/test';
import { DESK } from './desk-only.js';
import { readSketch, watch } from './embed-kit.js';

const BUILT = fileURLToPath(new URL('../../demo/dist/', import.meta.url));
const MEDIA: Readonly<Record<string, string>> = { '.js': 'text/javascript', '.json': 'application/json' };

interface Answer {
  readonly headers: Readonly<Record<string, string>>;
  readonly body: string | Uint8Array;
}

/** A site of its own, at an origin of its own. */
async function site(answer: (path: string) => Promise<Answer>): Promise<Server & { readonly origin: string }> {
  const server = createServer((request, response) => {
    answer(request.url ?? '/').then(
      ({ headers, body }) => response.writeHead(200, headers).end(body),
      (error: unknown) => response.writeHead(404).end(String(error)),
    );
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return Object.assign(server, { origin: `http://127.0.0.1:${(server.address() as AddressInfo).port}` });
}

/** What README asks of a strict page whose files come from `files`. */
function policy(files: string): string {
  return [
    "default-src 'none'",
    `script-src ${files}`,
    "style-src 'self'",
    "connect-src 'self'",
    `worker-src ${files} blob:`,
    'img-src data: blob:',
    "require-trusted-types-for 'script'",
    'trusted-types trimwell',
  ].join('; ');
}

test('files of another site plan and hand on in a strict page', { tag: DESK }, async ({ page }) => {
  const seen = watch(page);
  const files = await site(async (path) => ({
    headers: { 'content-type': MEDIA[extname(path)] ?? 'application/octet-stream', 'access-control-allow-origin': '*' },
    body: await readFile(`${BUILT}trimwell${path}`),
  }));
  const blog = await site(async (path) =>
    path === '/card.json'
      ? { headers: {}, body: await readFile(`${BUILT}sketches/hedgerow-wreath.json`) }
      : {
          headers: { 'content-type': 'text/html; charset=utf-8', 'content-security-policy': policy(files.origin) },
          body: `<!doctype html><html lang="en"><title>A blog</title><link rel="icon" href="data:,"><h1>A post</h1>
            <script type="module" src="${files.origin}/trimwell-sketch.js"></script>
            <trimwell-sketch src="card.json"></trimwell-sketch>`,
        },
  );
  try {
    await page.goto(`${blog.origin}/post.html`);
    await readSketch(page);
    await page.getByRole('button', { name: 'Make it yours' }).click();
    await expect(page.locator('trimwell-sketch .tally')).toContainText('12 cards from');
    await page.locator('trimwell-sketch summary').filter({ hasText: 'Print, save, keep' }).click();
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Piece list (CSV)' }).click(),
    ]);
    expect(download.suggestedFilename()).toMatch(/\.csv$/);
    expect(seen.errors).toEqual([]);
  } finally {
    for (const server of [files, blog]) {
      server.closeAllConnections();
      server.close();
    }
  }
});
