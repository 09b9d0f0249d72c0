import { cpSync, createReadStream, existsSync, readFileSync } from 'node:fs';
import { extname, normalize } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Plugin, ViteDevServer } from 'vite';

/** Where the files of the live sketch lie: as `@trimwell/embed` publishes them, and their folder on the site. */
const PUBLISHED = fileURLToPath(new URL('../packages/embed/dist/bundle/', import.meta.url));
const FOLDER = 'trimwell';

const MEDIA: Readonly<Record<string, string>> = {
  '.js': 'text/javascript',
  '.html': 'text/html',
  '.css': 'text/css',
  '.json': 'application/json',
  '.woff': 'font/woff',
};

/** The live sketch's own files, beside the pages as they would lie on any site. */
export function embedFiles(): Plugin {
  return {
    name: 'embed-files',
    writeBundle({ dir }) {
      if (dir && existsSync(PUBLISHED)) cpSync(PUBLISHED, `${dir}/${FOLDER}`, { recursive: true });
    },
    configureServer(server) {
      server.middlewares.use(`/${FOLDER}`, (request, response, next) => {
        const path = normalize(new URL(request.url ?? '/', 'http://localhost').pathname);
        const file = `${PUBLISHED}${path.slice(1)}`;
        if (path === '/' || path.includes('..') || !existsSync(file)) {
          next();
          return;
        }
        response.setHeader('Content-Type', MEDIA[extname(path)] ?? 'application/octet-stream');
        createReadStream(file).pipe(response);
      });
    },
  };
}

/** `{{static hedgerow-wreath}}`, `{{code …}}`, `{{inline …}}`: what of a sketch stands there. */
const WISH = /\{\{(static|code|inline) ([a-z0-9-]+)\}\}/g;

interface Writers {
  readonly expectSketch: typeof import('@trimwell/sketch').expectSketch;
  readonly writeShareCode: typeof import('@trimwell/sketch/share-code').writeShareCode;
  readonly staticSnippet: typeof import('@trimwell/handout/embed').staticSnippet;
}

/** Our own packages: from their sources while developing, as built otherwise. */
async function writers(server: ViteDevServer | undefined): Promise<Writers> {
  if (!server) {
    const [sketch, share, embed] = await Promise.all([
      import('@trimwell/sketch'),
      import('@trimwell/sketch/share-code'),
      import('@trimwell/handout/embed'),
    ]);
    return { ...sketch, ...share, ...embed };
  }
  const loaded = await Promise.all(
    ['@trimwell/sketch', '@trimwell/sketch/share-code', '@trimwell/handout/embed'].map((id) =>
      server.ssrLoadModule(id),
    ),
  );
  return Object.assign({}, ...loaded) as Writers;
}

/** What a page wishes of a sketch, as it is copied out of the tray "To hand on"; every page is written anew from the sketches. */
export function sketchesInPages(sketches: string): Plugin {
  return {
    name: 'sketches-in-pages',
    transformIndexHtml: {
      order: 'pre',
      async handler(html, { server }) {
        if (html.search(WISH) < 0) return html;
        const { expectSketch, writeShareCode, staticSnippet } = await writers(server);
        let count = 0;
        return html.replaceAll(WISH, (_, what: string, name: string) => {
          const text = readFileSync(`${sketches}/${name}.json`, 'utf8');
          // A sketch inside a script must not end it.
          if (what === 'inline')
            return `<script type="application/json">${text.trim().replaceAll('<', '\\u003c')}</script>`;
          const sketch = expectSketch(JSON.parse(text));
          if (what === 'code') return writeShareCode(sketch);
          count += 1;
          return staticSnippet(sketch, { prefix: `${name}-${count}` }).trimEnd();
        });
      },
    },
  };
}
