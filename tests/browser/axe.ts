import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from '@playwright/test';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface AxeResults {
  readonly violations: readonly {
    readonly id: string;
    readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[];
  }[];
}

/**
 * What axe finds against WCAG 2.2 A and AA, a line each; `within` is a way through shadow roots to the one part that is
 * looked at, from the outermost host.
 */
export async function axeViolations(page: Page, within?: readonly string[]): Promise<readonly string[]> {
  await page.evaluate(axe);
  const results = await page.evaluate(async (part) => {
    const { axe: checker } = window as unknown as {
      axe: { run(root: Document | object, options: object): Promise<AxeResults> };
    };
    return checker.run(part ? { include: [{ fromShadowDom: part }] } : document, {
      runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
    });
  }, within);
  return results.violations.flatMap(({ id, nodes }) =>
    nodes.map((node) => `${id}: ${node.html.slice(0, 160)} ${node.failureSummary ?? ''}`),
  );
}
