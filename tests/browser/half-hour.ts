import { expect, type Locator, type Page, test } from '@playwright/test';
import type { TrimwellEditor } from '@trimwell/editor';
import { checkSketch, type Piece, type Sketch } from '@trimwell/sketch';
import { axeViolations } from './axe.js';
import { settledPlan } from './table.js';

const INCH = 16256;
/** One mark of the inch ruler. */
const MARK = INCH / 16;

/** How somebody works: by mouse, by finger, or by keys alone. */
export interface Hand {
  press(target: Locator): Promise<void>;
  /** Writes over what stands in a field, and commits it. */
  fill(box: Locator, words: string): Promise<void>;
  choose(list: Locator, words: string): Promise<void>;
  /** Cuts a piece from a paper, as this hand likes to. */
  cut(page: Page, paper: string): Promise<void>;
  /** Moves the piece that is taken a little, on the card itself. */
  move(page: Page, piece: string): Promise<void>;
  /** Chooses a blank card in the tray of new cards. */
  chooseBlank(page: Page): Promise<void>;
  /** Sets the batch by the ruler, from six cards to twelve. */
  setTwelve(page: Page): Promise<void>;
}

export async function onTable(page: Page): Promise<Sketch> {
  const sketch = await page.evaluate(() => document.querySelector<TrimwellEditor>('trimwell-editor')?.sketch ?? null);
  if (!sketch) throw new Error('no sketch on the table');
  return sketch;
}

async function named(page: Page, name: string): Promise<Piece> {
  const found = (await onTable(page)).pieces.find((piece) => piece.name === name);
  if (!found) throw new Error(`no piece is called ${name}`);
  return found;
}

async function expectAxeContent(page: Page): Promise<void> {
  expect(await axeViolations(page)).toEqual([]);
}

interface Wanted {
  readonly name: string;
  readonly paper: string;
  readonly kind?: string;
  readonly fields: Readonly<Record<string, string>>;
}

/** A new user's half hour, from a blank card to a finished sketch of nine pieces, step by step. */
export class HalfHour {
  constructor(
    private readonly page: Page,
    private readonly hand: Hand,
  ) {}

  get #ticket(): Locator {
    return this.page.locator('trimwell-ticket');
  }

  #button(name: string | RegExp, within: Page | Locator = this.page): Locator {
    return within.getByRole('button', { name, exact: typeof name === 'string' });
  }

  async #step(name: string, work: () => Promise<void>): Promise<void> {
    await test.step(name, async () => {
      await work();
      await expectAxeContent(this.page);
    });
  }

  async #set(label: string, words: string): Promise<void> {
    await this.hand.fill(this.#ticket.getByRole('textbox', { name: label, exact: true }), words);
  }

  async #choose(label: string, words: string): Promise<void> {
    await this.hand.choose(this.#ticket.getByRole('combobox', { name: label, exact: true }), words);
  }

  async #glue({ name, paper, kind, fields }: Wanted): Promise<void> {
    await this.hand.cut(this.page, paper);
    await expect(this.#ticket.getByRole('textbox', { name: 'Name of the piece' })).toHaveValue(new RegExp(paper));
    if (kind) await this.#choose('What it is on the card', kind);
    await this.#set('Name of the piece', name);
    for (const [label, words] of Object.entries(fields)) await this.#set(label, words);
  }

  async #blankCard(): Promise<void> {
    await this.hand.press(this.#button('New card'));
    await this.page.locator('trimwell-new-card').waitFor();
    await expectAxeContent(this.page);
    await this.hand.chooseBlank(this.page);
    await this.hand.press(this.#button('Lay it out'));
    await expect.poll(async () => (await onTable(this.page)).pieces.length).toBe(0);
    await settledPlan(this.page);
    // The card has the focus, and the table says what to do first.
    await expect(this.page.getByRole('listbox', { name: 'Blank card, card face' })).toBeFocused();
    await expect(this.#ticket).toContainText('that cuts the first piece');
  }

  async #mix(): Promise<void> {
    await this.hand.press(this.#button('Fern fronds'));
    await this.page.locator('trimwell-papers').waitFor();
    await this.hand.press(this.#button('Make a mix'));
    const name = this.page.getByRole('textbox', { name: 'Name of the mix' });
    await expect(name).toBeFocused();
    await this.hand.fill(name, 'Hedge prints');
    await expectAxeContent(this.page);
    await this.page.keyboard.press('Escape');
    await this.page.locator('trimwell-papers').waitFor({ state: 'detached' });
    expect((await onTable(this.page)).mixes).toMatchObject([{ name: 'Hedge prints', papers: { length: 2 } }]);
  }

  async #panel(): Promise<void> {
    const fields = { Width: '4 1/4 - 2*1/4', Height: '5 1/2 - 2*1/4', 'From the left': '1/4', 'From the top': '1/4' };
    await this.#glue({ name: 'Panel', paper: 'Fern fronds', fields });
    await this.#choose('Paper', 'Hedge prints');
    await this.hand.press(this.#button('Round by 1⁄4 in', this.#ticket));
    await this.hand.press(this.#button('Mat it', this.#ticket));
    await expect(this.#button('Mat it', this.#ticket)).toBeFocused();
    const { id, width, height, corners } = await named(this.page, 'Panel');
    expect([width, height, corners.tl]).toEqual([3.75 * INCH, 5 * INCH, INCH / 4]);
    const mat = await named(this.page, 'Panel mat');
    expect(mat).toMatchObject({
      mats: { piece: id, reveal: INCH / 8, concentric: true },
      corners: { tl: (3 * INCH) / 8 },
    });
    expect(mat.from).not.toBe((await onTable(this.page)).card.base);
  }

  async #strip(): Promise<void> {
    await this.#glue({
      name: 'Strip',
      paper: 'Lane stripe',
      fields: { Width: '3 3/4', Height: '1 1/4', 'From the top': '2 3/4' },
    });
    const before = await named(this.page, 'Strip');
    await this.hand.move(this.page, before.id);
    const after = await named(this.page, 'Strip');
    expect(after.y).toBeGreaterThan(before.y);
    expect([after.x % MARK, after.y % MARK]).toEqual([0, 0]);
    await this.#set('From the left', '1/4');
    await this.#set('From the top', '3');
  }

  async #punchedEdge(): Promise<void> {
    const fields = { Width: '3 3/4', Height: '3/4', 'From the left': '1/4', 'From the top': '4' };
    await this.#glue({ name: 'Lace edge', paper: 'Clotted cream card', fields });
    const bottom = this.#button('bottom plain', this.#ticket);
    await this.hand.press(bottom);
    const slip = this.page.locator('trimwell-edge-slip');
    await expect(this.#button('Plain', slip)).toBeFocused();
    await expectAxeContent(this.page);
    await this.hand.press(this.#button('Scallop', slip));
    await this.hand.press(this.#button(/^Make it/, slip));
    await this.hand.press(this.#button('Done', slip));
    await slip.waitFor({ state: 'detached' });
    const lace = await named(this.page, 'Lace edge');
    const punch = (await onTable(this.page)).punches.find(({ id }) => id === lace.punched.bottom);
    expect(punch).toMatchObject({ profile: 'scallop' });
    expect(lace.width % (punch?.repeat ?? 0)).toBe(0);
  }

  async #picture(): Promise<void> {
    const fields = { Width: '2', Height: '2 1/2', 'From the left': '1 1/8', 'From the top': '3/4' };
    await this.#glue({ name: 'Picture', paper: 'Clotted cream card', fields });
    await this.hand.press(this.#button('Round by 1⁄8 in', this.#ticket));
    await this.hand.press(this.#button('Mat it', this.#ticket));
    expect((await named(this.page, 'Picture mat')).width).toBe(2.25 * INCH);
  }

  async #rest(): Promise<void> {
    await this.#glue({ name: 'Banner', paper: 'Fern card', kind: 'banner', fields: { 'From the top': '3' } });
    expect(await named(this.page, 'Banner')).toMatchObject({ shape: 'banner', x: 0, height: INCH });
    await this.#glue({
      name: 'Tag',
      paper: 'Lane stripe',
      kind: 'tag',
      fields: { Width: '1', Height: '1 3/4', 'From the left': '2 15/16', 'From the top': '3/8' },
    });
    expect(await named(this.page, 'Tag')).toMatchObject({ shape: 'tag', kind: 'tag' });
    await this.#glue({
      name: 'Greeting',
      paper: 'Clotted cream card',
      kind: 'sentiment',
      fields: { Height: '1/2', 'From the top': '3 1/4', 'Raised by': '1/16' },
    });
    await settledPlan(this.page);
    await expectAxeContent(this.page);
    await this.hand.press(this.#button('Done', this.#ticket));
    await expect(this.page.getByRole('listbox', { name: 'Blank card, card face' })).toBeFocused();
  }

  async #words(): Promise<void> {
    await this.hand.fill(this.page.getByRole('textbox', { name: 'Title of the sketch' }), 'Hedge parcel');
    await this.hand.press(this.#button('Words and card size'));
    const note = this.page.locator('trimwell-about-card').getByRole('textbox', { name: 'Notes to the makers' });
    await note.waitFor();
    await this.hand.fill(note, 'Score the fold before gluing.');
    await this.page.keyboard.press('Tab');
    await expectAxeContent(this.page);
    await this.page.keyboard.press('Escape');
    await this.page.locator('trimwell-about-card').waitFor({ state: 'detached' });
    expect(await onTable(this.page)).toMatchObject({
      title: 'Hedge parcel',
      notes: expect.stringContaining('Score the fold'),
    });
  }

  async #variation(): Promise<void> {
    await this.hand.press(this.#button('Start another'));
    const name = this.page.getByRole('textbox', { name: 'Name of the variation that changes go into' });
    await expect(name).toBeFocused();
    await this.hand.fill(name, 'Longer tag');
    await this.hand.press(this.page.locator('trimwell-stack').getByRole('button', { name: /Tag$/ }).first());
    await this.#set('Height', '2');
    await expectAxeContent(this.page);
    await this.hand.press(this.#button('Done', this.page.locator('trimwell-writing-band')));
    await this.hand.press(this.#button('Done', this.#ticket));
    const { variations } = await onTable(this.page);
    expect(variations).toMatchObject([{ name: 'Longer tag', edits: { length: 1 } }]);
    expect((await named(this.page, 'Tag')).height).toBe(1.75 * INCH);
  }

  async #batch(): Promise<void> {
    await this.hand.setTwelve(this.page);
    await settledPlan(this.page);
    await this.hand.press(this.#button('Lay out all 12'));
    await expect(this.page.locator('trimwell-batch')).toContainText('12 cards');
    const plan = await this.page.evaluate(() => {
      const batch = document.querySelector<TrimwellEditor>('trimwell-editor')?.plan;
      return batch ? { cards: batch.cards, complete: batch.complete, sheets: batch.sheets } : null;
    });
    expect(plan).toMatchObject({ cards: 12, complete: true });
    expect(plan?.sheets).toBeGreaterThanOrEqual(10);
  }

  async #handOn(): Promise<void> {
    await this.hand.press(this.#button('Shelf'));
    await expect(this.page.getByRole('listbox', { name: 'Kept sketches' })).toContainText('Hedge parcel');
    await expectAxeContent(this.page);
    await this.page.keyboard.press('Escape');
    await this.page.locator('trimwell-shelf').waitFor({ state: 'detached' });
    await this.hand.press(this.#button('Hand on'));
    await this.hand.press(this.#button('Copy a link that carries the sketch'));
    const link = this.page.getByRole('textbox', { name: 'The link', exact: true });
    await expect(link).toHaveValue(/#sketch=/);
    await expect(this.page.locator('trimwell-hand-on').getByRole('status')).not.toHaveText('');
    const tab = await this.page.context().newPage();
    await tab.goto(await link.inputValue());
    await expect(tab.getByRole('textbox', { name: 'Title of the sketch' })).toHaveValue('Hedge parcel');
    const { pieces } = await onTable(tab);
    expect(pieces).toEqual((await onTable(this.page)).pieces);
    await tab.close();
  }

  /** All of it; axe looks at every stage. */
  async act(): Promise<void> {
    await this.#step('a blank card', () => this.#blankCard());
    await this.#step('a mix of papers', () => this.#mix());
    await this.#step('a rounded panel on a mat, from the mix', () => this.#panel());
    await this.#step('a strip', () => this.#strip());
    await this.#step('a punched edge', () => this.#punchedEdge());
    await this.#step('a picture on a mat', () => this.#picture());
    await this.#step('a banner, a tag and a greeting', () => this.#rest());
    const sketch = await onTable(this.page);
    expect(sketch.pieces.map(({ name }) => name)).toEqual([
      'Panel mat',
      'Panel',
      'Strip',
      'Lace edge',
      'Picture mat',
      'Picture',
      'Banner',
      'Tag',
      'Greeting',
    ]);
    expect(checkSketch(sketch)).toEqual([]);
    await this.#step('title and note', () => this.#words());
    await this.#step('a variation', () => this.#variation());
    await this.#step('twelve cards', () => this.#batch());
    await this.#step('the shelf and a link', () => this.#handOn());
  }
}
