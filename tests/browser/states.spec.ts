import { expect, type Locator, type Page, test } from '@playwright/test';
import { axeViolations } from './axe.js';
import { DESK, deskByNight } from './desk-only.js';
import { boxOf, expectNoErrors, openTable, outlineBox, pieceIn, pieceOn, settledPlan } from './table.js';

const MARK = 1016;

/** The colours of a shape as the browser paints it. */
async function painted(shape: Locator): Promise<{ readonly fill: string; readonly stroke: string }> {
  return shape.evaluate((element) => {
    const { fill, stroke } = getComputedStyle(element);
    return { fill, stroke };
  });
}

async function sidewaysRoom(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
}

for (const colorScheme of ['light', 'dark'] as const) {
  test(`with forced colours by ${colorScheme}, papers keep their look, and focus and selection are seen`, {
    tag: deskByNight(colorScheme),
  }, async ({ page }) => {
    await page.emulateMedia({ colorScheme });
    const errors = await openTable(page);
    const papers = ['strip', 'panel-mat', 'wreath'].map((id) => pieceOn(page, id).locator('path[data-role="outline"]'));
    const before = await Promise.all(papers.map(painted));
    expect(new Set(before.map(({ fill }) => fill)).size).toBe(papers.length);
    await page.emulateMedia({ colorScheme, forcedColors: 'active' });
    expect(await Promise.all(papers.map(painted))).toEqual(before);
    await pieceOn(page, 'strip').focus();
    await page.keyboard.press('Enter');
    const face = page.locator('trimwell-face');
    await expect(face.locator('.frames path.focused')).toHaveCount(1);
    await expect(face.locator('.frames path.selected')).toHaveCount(1);
    // The table takes the visitor's own colours, and what is on is told by more than a shadow.
    const table = await page.locator('trimwell-editor').evaluate((editor) => getComputedStyle(editor).backgroundColor);
    expect(table).toBe(colorScheme === 'dark' ? 'rgb(0, 0, 0)' : 'rgb(255, 255, 255)');
    const front = page.getByRole('button', { name: 'Front', exact: true });
    const inside = page.getByRole('button', { name: 'Inside', exact: true });
    const border = (button: Locator) => button.evaluate((element) => getComputedStyle(element).borderBottomWidth);
    expect([await border(front), await border(inside)]).toEqual(['2px', '0px']);
    expect(await axeViolations(page)).toEqual([]);
    expectNoErrors(errors);
  });
}

test.describe('at 200 % zoom', () => {
  test.use({ viewport: { width: 640, height: 400 }, deviceScaleFactor: 2 });

  test('everything is reached without scrolling sideways, and the focus is never under the ticket', async ({
    page,
  }) => {
    const errors = await openTable(page);
    expect(await sidewaysRoom(page)).toBeLessThanOrEqual(0);
    await pieceOn(page, 'strip').focus();
    await page.keyboard.press('Enter');
    const ticket = page.locator('trimwell-ticket');
    await expect(ticket).toBeVisible();
    expect(await sidewaysRoom(page)).toBeLessThanOrEqual(0);
    const paper = ticket.getByRole('combobox', { name: 'Paper', exact: true });
    await paper.focus();
    const [field, last] = [await boxOf(paper), await boxOf(ticket.getByRole('button', { name: 'Take away' }))];
    expect(field.y + field.height).toBeLessThanOrEqual(last.y);
    const cut = page.getByRole('button', { name: 'Cut a piece from Rowan card' });
    await cut.focus();
    expect((await boxOf(cut)).y + (await boxOf(cut)).height).toBeLessThanOrEqual((await boxOf(ticket)).y);
    for (const name of ['New card', 'Shelf', 'Tools', 'Keys']) {
      await page.getByRole('button', { name, exact: true }).click();
      const away = page.getByRole('button', { name: 'Put away', exact: true });
      await expect(away).toBeInViewport();
      expect(await sidewaysRoom(page)).toBeLessThanOrEqual(0);
      await away.click();
      await away.waitFor({ state: 'detached' });
    }
    expectNoErrors(errors);
  });
});

test('with reduced motion nothing on the table or in a tray moves by itself', { tag: DESK }, async ({ page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await openTable(page);
  await pieceOn(page, 'strip').focus();
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'New card', exact: true }).click();
  await page.locator('trimwell-new-card').waitFor();
  const moving = await page.evaluate(() => {
    const roots: (Document | ShadowRoot)[] = [document];
    const found: string[] = [];
    for (let root = roots.pop(); root; root = roots.pop()) {
      for (const element of root.querySelectorAll('*')) {
        if (element.shadowRoot) roots.push(element.shadowRoot);
        const { display, transitionDuration, animationName } = getComputedStyle(element);
        // What a part has for as long as it is not there is in no slot, and has no style at all.
        if (display === '') continue;
        const still = transitionDuration.split(', ').every((time) => time === '0s') && animationName === 'none';
        if (!still) found.push(`${element.tagName} ${element.className} ${transitionDuration} ${animationName}`);
      }
    }
    return found;
  });
  expect(moving).toEqual([]);
});

test('on a page that runs from right to left the table still runs its own way, and its figures read', {
  tag: DESK,
}, async ({ page }) => {
  const errors = await openTable(page);
  const before = await outlineBox(page, 'strip');
  const pin = () => page.locator('trimwell-yield .pin').boundingBox();
  const pinBefore = await pin();
  await page.evaluate(() => {
    document.documentElement.dir = 'rtl';
  });
  const after = await outlineBox(page, 'strip');
  // To the pixel or two that the page gains or loses at its edge.
  expect([after.width, after.height]).toEqual([before.width, before.height]);
  expect(Math.abs(after.x - before.x)).toBeLessThanOrEqual(2);
  expect(Math.abs(((await pin())?.x ?? 0) - (pinBefore?.x ?? 0))).toBeLessThanOrEqual(2);
  expect(await sidewaysRoom(page)).toBeLessThanOrEqual(0);
  await pieceOn(page, 'strip').focus();
  await page.keyboard.press('Enter');
  const way = page.locator('trimwell-ticket').getByRole('textbox', { name: 'Width', exact: true });
  expect(await way.evaluate((box) => getComputedStyle(box).direction)).toBe('ltr');
  await page.getByRole('button', { name: 'Keys', exact: true }).click();
  const keys = page.locator('trimwell-keys');
  await keys.waitFor();
  expect(await keys.evaluate((list) => getComputedStyle(list).direction)).toBe('ltr');
  expectNoErrors(errors);
});

test('a pen takes a piece and drags it, on the ruler', { tag: DESK }, async ({ page }) => {
  const errors = await openTable(page);
  const start = await pieceIn(page, 'greeting');
  const box = await outlineBox(page, 'greeting');
  const from = { x: box.x + 10, y: box.y + box.height / 2 };
  const client = await page.context().newCDPSession(page);
  const pen = (type: 'mousePressed' | 'mouseMoved' | 'mouseReleased', x: number, y: number) =>
    client.send('Input.dispatchMouseEvent', {
      type,
      x,
      y,
      button: 'left',
      buttons: type === 'mouseReleased' ? 0 : 1,
      clickCount: type === 'mouseMoved' ? 0 : 1,
      pointerType: 'pen',
    });
  // Listened for before the pen is set down: what is pressed first must not be missed.
  await page.evaluate(() => {
    const note = ({ pointerType }: PointerEvent) => document.documentElement.setAttribute('data-pointer', pointerType);
    addEventListener('pointerdown', note, { once: true });
  });
  await pen('mousePressed', from.x, from.y);
  await expect(page.locator('html')).toHaveAttribute('data-pointer', 'pen');
  for (let step = 1; step <= 10; step += 1) await pen('mouseMoved', from.x + step, from.y - 4 * step);
  await pen('mouseReleased', from.x + 10, from.y - 40);
  await settledPlan(page);
  const moved = await pieceIn(page, 'greeting');
  expect(moved.y).toBeLessThan(start.y);
  expect([moved.x % MARK, moved.y % MARK]).toEqual([0, 0]);
  expectNoErrors(errors);
});
