import { test } from '@playwright/test';
import { HalfHour, type Hand } from './half-hour.js';
import { boxOf, drawFinger, expectNoErrors, openTable, outlineBox } from './table.js';

test.use({ actionTimeout: 10_000 });

const finger: Hand = {
  press: (target) => target.tap(),
  async fill(box, words) {
    await box.tap();
    await box.fill(words);
    await box.press('Enter');
  },
  async choose(list, words) {
    await list.selectOption({ label: words });
  },
  async cut(page, paper) {
    await page.getByRole('button', { name: `Cut a piece from ${paper}` }).tap();
  },
  async move(page, piece) {
    await page.locator('trimwell-face').evaluate((face) => face.scrollIntoView());
    const box = await outlineBox(page, piece);
    const from = { x: box.x + box.width / 4, y: box.y + box.height / 2 };
    await drawFinger(page, from, { x: from.x + 2, y: from.y + 30 });
  },
  async chooseBlank(page) {
    await page.locator('trimwell-new-card label.layout').filter({ hasText: 'Blank card' }).tap();
  },
  async setTwelve(page) {
    const slider = page.getByRole('slider', { name: 'Cards in the batch' });
    await slider.scrollIntoViewIfNeeded();
    const ruler = await boxOf(slider);
    await page.touchscreen.tap(ruler.x + (ruler.width * 11.5) / 24, ruler.y + ruler.height / 2);
  },
};

test("a new user's half hour by finger: from a blank card to nine pieces, planned, kept and handed on", async ({
  page,
  context,
}) => {
  test.setTimeout(180_000);
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  const errors = await openTable(page);
  await new HalfHour(page, finger).act();
  expectNoErrors(errors);
});
