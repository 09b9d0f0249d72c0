import { expect, type Locator, test } from '@playwright/test';
import { HalfHour, type Hand } from './half-hour.js';
import { boxOf, expectNoErrors, middleOf, openTable, outlineBox, pull } from './table.js';

test.use({ actionTimeout: 10_000 });

/** More stops of the Tab key than this has no screen of the table. */
const MOST_STOPS = 160;

const mouse: Hand = {
  press: (target) => target.click(),
  async fill(box, words) {
    await box.click();
    await box.fill(words);
    await box.press('Enter');
  },
  async choose(list, words) {
    await list.selectOption({ label: words });
  },
  async cut(page, paper) {
    const row = page
      .locator('trimwell-sheets li')
      .filter({ has: page.getByRole('button', { name: `Cut a piece from ${paper}` }) });
    await row.scrollIntoViewIfNeeded();
    const [sheet, card] = [
      await middleOf(row.locator('.sheet')),
      await boxOf(page.locator('trimwell-face svg').first()),
    ];
    // On a phone the card may lie farther up than a mouse gets; the button does the same.
    if (card.y < 0) {
      await page.getByRole('button', { name: `Cut a piece from ${paper}` }).click();
      return;
    }
    await pull(page, sheet, { x: card.x + card.width / 2, y: card.y + card.height / 2 });
    await page.mouse.up();
  },
  async move(page, piece) {
    const box = await outlineBox(page, piece);
    const from = { x: box.x + box.width / 4, y: box.y + box.height / 2 };
    await pull(page, from, { x: from.x + 2, y: from.y + 21 });
    await page.mouse.up();
  },
  async chooseBlank(page) {
    await page.locator('trimwell-new-card label.layout').filter({ hasText: 'Blank card' }).click();
  },
  async setTwelve(page) {
    const slider = page.getByRole('slider', { name: 'Cards in the batch' });
    await slider.scrollIntoViewIfNeeded();
    const ruler = await boxOf(slider);
    await page.mouse.click(ruler.x + (ruler.width * 11.5) / 24, ruler.y + ruler.height / 2);
  },
};

/** Goes to `target` by the Tab key alone, from wherever the focus is. */
async function tabTo(target: Locator): Promise<void> {
  const page = target.page();
  for (let stop = 0; stop < MOST_STOPS; stop += 1) {
    const there = await target.evaluate((element) => {
      let active = document.activeElement;
      while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
      return active === element || (active !== null && element.shadowRoot?.activeElement === active);
    });
    if (there) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`the Tab key does not come to ${target}`);
}

const keys: Hand = {
  async press(target) {
    // Of a list that is one stop, the arrows go on from there.
    if (await target.evaluate((element) => element.getAttribute('tabindex') === '-1')) {
      await tabTo(target.page().locator('trimwell-stack [role="grid"] [tabindex="0"]'));
      await target.page().keyboard.press('Home');
      for (let row = 0; row < 20 && !(await target.evaluate((one) => one.matches(':focus'))); row += 1)
        await target.page().keyboard.press('ArrowDown');
    } else await tabTo(target);
    await target.page().keyboard.press('Enter');
  },
  async fill(box, words) {
    await tabTo(box);
    await box.page().keyboard.press('Control+a');
    await box.page().keyboard.insertText(words);
    await box.page().keyboard.press('Enter');
  },
  async choose(list, words) {
    await tabTo(list);
    const by = await list.evaluate((element, wanted) => {
      const { options, selectedIndex } = element as HTMLSelectElement;
      return [...options].findIndex(({ text }) => text.trim() === wanted) - selectedIndex;
    }, words);
    for (let step = 0; step < Math.abs(by); step += 1)
      await list.page().keyboard.press(by > 0 ? 'ArrowDown' : 'ArrowUp');
  },
  async cut(page, paper) {
    await keys.press(page.getByRole('button', { name: `Cut a piece from ${paper}` }));
  },
  async move(page, piece) {
    await tabTo(page.locator(`trimwell-face [role="option"][data-piece="${piece}"]`));
    for (let mark = 0; mark < 4; mark += 1) await page.keyboard.press('ArrowDown');
    await expect(page.locator('trimwell-face').getByRole('status')).toContainText('from top');
  },
  async chooseBlank(page) {
    await tabTo(page.locator('trimwell-new-card').getByRole('radio', { name: /^Window and mat/ }));
    await page.keyboard.press('ArrowLeft');
    await expect(page.locator('trimwell-new-card').getByRole('radio', { name: /^Blank card/ })).toBeChecked();
  },
  async setTwelve(page) {
    await tabTo(page.getByRole('slider', { name: 'Cards in the batch' }));
    for (let card = 0; card < 6; card += 1) await page.keyboard.press('ArrowRight');
  },
};

for (const [name, hand] of [
  ['by mouse', mouse],
  ['by keys alone', keys],
] as const) {
  test(`a new user's half hour ${name}: from a blank card to nine pieces, planned, kept and handed on`, async ({
    page,
    context,
  }) => {
    test.setTimeout(180_000);
    await context.grantPermissions(['clipboard-read', 'clipboard-write']);
    const errors = await openTable(page);
    await new HalfHour(page, hand).act();
    expectNoErrors(errors);
  });
}
