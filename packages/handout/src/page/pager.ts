import { type Atom, type AtomGroup, gathered } from './atom.js';
import type { Page, PageBlock, PageMark } from './page.js';
import type { PageFrame } from './sheet-of-paper.js';

/** Atoms that follow each other in a column, `x` ticks from the left edge of the page. */
export interface Story {
  readonly x: number;
  readonly atoms: readonly Atom[];
}

interface OpenPage {
  readonly blocks: PageBlock[];
  readonly marks: PageMark[];
}

/** Where the next atom would stand. */
interface Cursor {
  readonly page: number;
  readonly y: number;
}

/** What has been put at the end of a column and is not yet a block, since more of its group may follow. */
interface Run {
  readonly group: AtomGroup | undefined;
  readonly blocks: PageBlock[];
}

/** Fills pages from the top, column by column, and makes a new page wherever one is full. */
export class Pager {
  readonly #pages: OpenPage[] = [];
  #cursor: Cursor;

  constructor(private readonly frame: PageFrame) {
    this.#cursor = { page: 0, y: frame.top };
  }

  /** Ticks left on the page below the cursor. */
  get room(): number {
    return this.frame.bottom - this.#cursor.y;
  }

  /** Pages that something stands on. */
  get count(): number {
    return this.#pages.length;
  }

  /** Goes on at the top of a page that nothing stands on yet. */
  breakPage(): void {
    if (this.#cursor.y > this.frame.top) this.#cursor = { page: this.#cursor.page + 1, y: this.frame.top };
  }

  /** Stories side by side from the cursor down, each on as many pages as it needs; the cursor goes below the longest. */
  set(...stories: readonly Story[]): void {
    const start = this.#cursor;
    const ends = stories.map((story) => this.#flow(story, start));
    this.#cursor = ends.reduce(
      (far, end) => (end.page > far.page || (end.page === far.page && end.y > far.y) ? end : far),
      start,
    );
  }

  /** The pages as they stand, each with what `furnish` adds to it; `index` counts from 0. */
  finish(furnish: (index: number) => readonly PageBlock[]): readonly Page[] {
    const { width, height } = this.frame;
    return this.#pages.map(({ blocks, marks }, index) => ({
      width,
      height,
      blocks: [...blocks, ...furnish(index)],
      marks: [...marks].sort((a, b) => a.y - b.y),
    }));
  }

  #page(index: number): OpenPage {
    for (let count = this.#pages.length; count <= index; count += 1) this.#pages.push({ blocks: [], marks: [] });
    const page = this.#pages[index];
    if (!page) throw new RangeError(`There is no page ${index}.`);
    return page;
  }

  /** The height of an atom with all that must not be parted from it. */
  #unparted(atoms: readonly Atom[], from: number): number {
    let height = 0;
    for (let index = from; index < atoms.length; index += 1) {
      const atom = atoms[index];
      if (!atom) break;
      const heads =
        atom.group && (index === from || atoms[index - 1]?.group !== atom.group) ? atom.group.head : undefined;
      height += (index === from ? 0 : atom.before) + (heads?.height ?? 0) + atom.height;
      if (!atom.stays) break;
    }
    return height;
  }

  #flow({ x, atoms }: Story, start: Cursor): Cursor {
    let { page, y } = start;
    let run: Run = { group: undefined, blocks: [] };
    const close = (): void => {
      if (run.blocks.length > 0) this.#page(page).blocks.push(...gathered(run.group, run.blocks));
      run = { group: undefined, blocks: [] };
    };
    atoms.forEach((atom, index) => {
      const top = y === this.frame.top;
      const before = top ? 0 : atom.before;
      if (!top && y + before + this.#unparted(atoms, index) > this.frame.bottom) {
        close();
        page += 1;
        y = this.frame.top;
      } else {
        y += before;
      }
      if (run.group !== atom.group) close();
      const open = this.#page(page);
      if (atom.group && run.blocks.length === 0) {
        run = { group: atom.group, blocks: [] };
        const { head } = atom.group;
        if (head) {
          run.blocks.push(...head.draw({ x, y }));
          y += head.height;
        }
      }
      if (atom.mark) open.marks.push({ ...atom.mark, y });
      const blocks = atom.draw({ x, y });
      if (atom.group) run.blocks.push(...blocks);
      else open.blocks.push(...blocks);
      y += atom.height;
    });
    close();
    return { page, y };
  }
}
