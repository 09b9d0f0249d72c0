import { expect, type Page, test } from '@playwright/test';
import type { TrimwellEditor } from '@trimwell/editor';
import type { Edit } from '@trimwell/sketch';
import { boxOf, drawFinger, openTable, pieceIn } from './table.js';

async function order(page: Page): Promise<string> {
  return page.evaluate(
    () =>
      document
        .querySelector<TrimwellEditor>('trimwell-editor')
        ?.sketch?.pieces.filter(({ face }) => face === 'front')
        .map(({ id }) => id)
        .join(' ') ?? '',
  );
}

const letter = (page: Page, id: string) => page.locator(`trimwell-stack .pick[data-row="${id}"] b`);

async function middle(page: Page, id: string) {
  const { x, y, width, height } = await boxOf(letter(page, id));
  return { x: x + width / 2, y: y + height / 2 };
}

test('a finger drags a slip by its letter, and scrolls beside it', async ({ page }) => {
  await openTable(page);
  await page.locator('trimwell-stack').scrollIntoViewIfNeeded();
  await page.locator('trimwell-stack').evaluate((stack) => stack.scrollIntoView({ block: 'center' }));
  const to = await middle(page, 'strip');
  await drawFinger(page, await middle(page, 'greeting'), { x: to.x, y: to.y + 10 });
  expect(await order(page)).toBe('panel-mat panel scallops greeting strip wreath-mat wreath');
  const name = await boxOf(page.locator('trimwell-stack .pick[data-row="panel"]'));
  const before = await page.evaluate(() => scrollY);
  await drawFinger(page, { x: name.x + 90, y: name.y + 12 }, { x: name.x + 90, y: name.y - 120 });
  await expect.poll(() => page.evaluate(() => scrollY)).toBeGreaterThan(before + 40);
  expect(await order(page)).toBe('panel-mat panel scallops greeting strip wreath-mat wreath');
});

test('a tap on a mark at the piece opens its slip, and a tap mends it', async ({ page }) => {
  await openTable(page);
  await page.evaluate(
    (edits) => {
      const session = document.querySelector<TrimwellEditor>('trimwell-editor')?.session;
      session?.dispatch({ event: 'test.edit', edits: edits as readonly Edit[], at: 1 });
    },
    [{ do: 'round', piece: 'greeting', corners: { tl: 16256, tr: 16256, br: 16256, bl: 16256 } }] as unknown[],
  );
  await page.locator('trimwell-watch-marks .mark[data-piece="greeting"]').tap();
  await page
    .getByRole('dialog', { name: 'To watch at Greeting' })
    .getByRole('button', { name: 'Make them smaller' })
    .tap();
  // Where there is foam, a mend waits until the card has been looked at.
  await expect.poll(async () => (await pieceIn(page, 'greeting')).corners.tl).toBe(4064);
});

test('the end of the list can be scrolled up from under the ticket', async ({ page }) => {
  await openTable(page);
  await page.evaluate(
    (edits) => {
      const session = document.querySelector<TrimwellEditor>('trimwell-editor')?.session;
      session?.dispatch({ event: 'test.edit', edits: edits as readonly Edit[], selection: ['greeting'], at: 1 });
    },
    [{ do: 'round', piece: 'greeting', corners: { tl: 16256, tr: 16256, br: 16256, bl: 16256 } }] as unknown[],
  );
  await expect(page.locator('trimwell-ticket')).toBeVisible();
  await expect(page.locator('trimwell-watch li').last()).toBeAttached();
  const ends = async () => {
    await page.evaluate(() => scrollTo(0, document.documentElement.scrollHeight));
    const [line, ticket] = [
      await boxOf(page.locator('trimwell-watch li').last()),
      await boxOf(page.locator('trimwell-ticket')),
    ];
    return ticket.y - (line.y + line.height);
  };
  await expect.poll(ends).toBeGreaterThan(0);
});
