import { expect, type Locator, type Page } from '@playwright/test';
import type { TrimwellEditor } from '@trimwell/editor';
import type { Piece, Sketch } from '@trimwell/sketch';

/** Opens a page of the demo and waits until every table on it has its first full plan. Page errors fail the test. */
export async function openTable(page: Page, path = './'): Promise<readonly string[]> {
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
  await page.goto(path);
  await settledPlan(page);
  return errors;
}

/** Waits until the plan of `editor` answers the sketch that is shown and the planner rests. */
export async function settledPlan(page: Page, editor = 'trimwell-editor'): Promise<void> {
  await page.waitForFunction((selector) => {
    const plan = document.querySelector<TrimwellEditor>(selector)?.session?.plan;
    return plan !== undefined && plan.batch !== null && !plan.stale && !plan.searching;
  }, editor);
}

/** Puts `sketch` on the table and waits for its plan and for its near misses. */
export async function laySketch(page: Page, sketch: Sketch): Promise<void> {
  await page.evaluate((wanted) => {
    const editor = document.querySelector<TrimwellEditor>('trimwell-editor');
    if (editor) editor.sketch = wanted;
  }, sketch);
  await restedPlan(page);
}

/** Waits until the planner has told all that it tells at rest: near misses come last. */
export async function restedPlan(page: Page): Promise<void> {
  await settledPlan(page);
  await page.waitForFunction(
    () => document.querySelector<TrimwellEditor>('trimwell-editor')?.session?.plan.offer !== null,
  );
}

/** The piece on the card face. */
export function pieceOn(page: Page, id: string, editor = 'trimwell-editor'): Locator {
  return page.locator(`${editor} trimwell-face [role="option"][data-piece="${id}"]`);
}

/** The piece in the sketch; lengths in ticks. */
export async function pieceIn(page: Page, id: string, editor = 'trimwell-editor'): Promise<Piece> {
  const piece = await page.evaluate(
    ([selector, wanted]) =>
      document.querySelector<TrimwellEditor>(selector)?.sketch?.pieces.find((candidate) => candidate.id === wanted) ??
      null,
    [editor, id] as const,
  );
  if (!piece) throw new Error(`no piece ${id}`);
  return piece;
}

/** The text of the whole sketch, for comparing before and after. */
export async function sketchText(page: Page, editor = 'trimwell-editor'): Promise<string> {
  return page.evaluate((selector) => JSON.stringify(document.querySelector<TrimwellEditor>(selector)?.sketch), editor);
}

/** What the sheets of `paper` say on the table: every letter and figure on them. */
export async function guideText(page: Page, paper: string, editor = 'trimwell-editor'): Promise<string> {
  const sheets = page.locator(`${editor} trimwell-sheets li`).filter({ hasText: paper });
  const texts = await sheets.locator('text').allTextContents();
  return texts.join(' | ');
}

/** What the tally says, on one line. */
export async function tally(page: Page, editor = 'trimwell-editor'): Promise<string> {
  return (await page.locator(`${editor} .tally`).innerText()).replace(/\s+/g, ' ');
}

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** The middle of an element's box. */
export async function middleOf(locator: Locator): Promise<Spot> {
  const box = await boxOf(locator);
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

export async function boxOf(locator: Locator) {
  const box = await locator.boundingBox();
  if (!box) throw new Error('the element is not shown');
  return box;
}

/** The outline of a piece on the screen, without its shadow. */
export async function outlineBox(page: Page, id: string, editor = 'trimwell-editor') {
  return boxOf(pieceOn(page, id, editor).locator('path[data-role="outline"]'));
}

/** Presses at `from` and moves to `to` in `steps`; the button stays down. */
export async function pull(page: Page, from: Spot, to: Spot, steps = 12): Promise<void> {
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  for (let step = 1; step <= steps; step += 1) {
    await page.mouse.move(from.x + ((to.x - from.x) * step) / steps, from.y + ((to.y - from.y) * step) / steps);
  }
}

/** A finger's drag, as the browser gets it from a touch screen. */
export async function drawFinger(page: Page, from: Spot, to: Spot, steps = 12): Promise<void> {
  const client = await page.context().newCDPSession(page);
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', points: readonly Spot[]) =>
    client.send('Input.dispatchTouchEvent', { type, touchPoints: points.map(({ x, y }) => ({ x, y })) });
  await touch('touchStart', [from]);
  for (let step = 1; step <= steps; step += 1) {
    await touch('touchMove', [
      { x: from.x + ((to.x - from.x) * step) / steps, y: from.y + ((to.y - from.y) * step) / steps },
    ]);
    await page.waitForTimeout(16);
  }
  await touch('touchEnd', []);
}

/** Pixels of the screen in one inch of the card. */
export async function pixelsPerInch(page: Page, editor = 'trimwell-editor'): Promise<number> {
  const panel = await outlineBox(page, 'panel', editor);
  return panel.width / ((await pieceIn(page, 'panel', editor)).width / 16256);
}

export function expectNoErrors(errors: readonly string[]): void {
  expect(errors).toEqual([]);
}
