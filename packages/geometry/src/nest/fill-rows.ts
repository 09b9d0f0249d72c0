import type { FillSheet, KindPlace, NestTask } from './nest-draft.js';

/** How rows are laid. */
export interface RowRule {
  /** Whether a part that may be turned lies with its longer side along the row, or stands on its shorter one. */
  readonly flat: boolean;
  /** Whether a row ends at the first part that does not fit (next-fit), or smaller ones fill it up. */
  readonly plain: boolean;
}

/** A kind as it stands in a row. */
interface Standing {
  readonly kind: number;
  readonly turned: boolean;
  readonly width: number;
  readonly height: number;
}

/** Every kind the way round that is wanted where it fits so, the tallest first. */
function standing(task: NestTask, flat: boolean): readonly Standing[] {
  return task.kinds
    .map(({ width, height }, kind): Standing => {
      const lies = { kind, turned: false, width, height };
      if (!task.turns[kind]) return lies;
      const other = { kind, turned: true, width: height, height: width };
      const [wish, second] = width >= height === flat ? [lies, other] : [other, lies];
      return wish.width <= task.width && wish.height <= task.height ? wish : second;
    })
    .sort((a, b) => b.height - a.height || b.width - a.width || a.kind - b.kind);
}

/**
 * The way that anybody would lay parts out: rows from the top, the tallest parts first, each row as high as its first
 * part (next-fit decreasing height when `plain`). What all other ways are measured by.
 */
export function fillRows(task: NestTask, { flat, plain }: RowRule): FillSheet {
  const order = standing(task, flat);
  return (wanted) => {
    const left = [...wanted];
    const places: KindPlace[] = [];
    const waits = ({ kind }: Standing): boolean => (left[kind] ?? 0) > 0;
    let y = 0;
    for (;;) {
      const first = order.find((each) => waits(each) && (plain || y + each.height <= task.height));
      if (!first || y + first.height > task.height) return places;
      let x = 0;
      for (const each of order) {
        const { kind, turned, width, height } = each;
        while (waits(each) && height <= first.height && x + width <= task.width) {
          places.push({ kind, x, y, turned });
          left[kind] = (left[kind] ?? 0) - 1;
          x += width;
        }
        if (plain && waits(each)) break;
      }
      y += first.height;
    }
  };
}

/** All rules for rows. */
export const ROW_RULES: readonly RowRule[] = [true, false].flatMap((flat) =>
  [true, false].map((plain) => ({ flat, plain })),
);
