import { plainCell } from '../../read/csv-cell.js';
import { CSV_SEPARATORS, type CsvCell, type CsvTable } from '../../read/read-csv.js';
import { type ListProblem, listProblem } from './list-problem.js';

/** The columns that are read, and the names under which they are found; the first is that of our own lists. */
const NAMES = {
  name: ['name', 'piece', 'part', 'item'],
  kind: ['kind', 'type'],
  paper: ['paper', 'from', 'cut from', 'material', 'cardstock', 'stock'],
  width: ['width', 'w', 'wide', 'across'],
  height: ['height', 'h', 'high', 'tall', 'length'],
  size: ['size', 'dimensions', 'width x height', 'w x h'],
  perCard: ['per card', 'each', 'pieces per card', 'number per card', 'quantity per card'],
  unit: ['unit', 'units'],
  shape: ['shape'],
  face: ['face', 'side'],
  blankWidth: ['blank width', 'cut width'],
  blankHeight: ['blank height', 'cut height'],
  quantity: ['quantity', 'qty', 'count', 'number', 'pieces', 'amount'],
  label: ['label', 'letter'],
} as const satisfies Readonly<Record<string, readonly string[]>>;

export type ListColumnName = keyof typeof NAMES;

/** Columns of our own lists that say again in another unit what stands in the row already. */
const REPEATED = ['blank width in', 'blank height in', 'blank width mm', 'blank height mm'];

/** The unit that a bare number is in, cm among them. */
export type BareUnit = 'in' | 'mm' | 'cm';

const UNITS: Readonly<Record<string, BareUnit>> = {
  in: 'in',
  inch: 'in',
  inches: 'in',
  '"': 'in',
  mm: 'mm',
  millimetres: 'mm',
  millimeters: 'mm',
  cm: 'cm',
  centimetres: 'cm',
  centimeters: 'cm',
};

/** The unit that a word names, or null. */
export function unitNamed(word: string): BareUnit | null {
  const key = word.trim().toLowerCase();
  return Object.hasOwn(UNITS, key) ? (UNITS[key] ?? null) : null;
}

/** A column that was found: where it stands, what it is called in the file, and the unit that its name states. */
export interface FoundColumn {
  readonly at: number;
  readonly title: string;
  readonly unit: BareUnit | null;
}

export interface ListHead {
  readonly row: number;
  readonly columns: ReadonlyMap<ListColumnName, FoundColumn>;
  /** Titles of columns that mean nothing here and are left out. */
  readonly ignored: readonly string[];
  /** The title of every column by its place. */
  readonly titles: readonly string[];
}

/** What a person meant by a cell: spaces at its ends count only inside quotes, and no guard against formulas. */
export function cellText({ text, quoted }: CsvCell): string {
  return plainCell(quoted ? text : text.trim());
}

/** `Width (mm)` as the name `width` in mm. */
function nameOf(title: string): { readonly name: string; readonly unit: BareUnit | null } {
  const plain = title
    .toLowerCase()
    .replaceAll('×', 'x')
    .replace(/[\s_-]+/g, ' ')
    .trim();
  if (REPEATED.includes(plain)) return { name: plain, unit: null };
  const [, before = '', word = ''] = /^(.*?)[ ,]*[([ ]([a-z"]+)[)\]]?$/.exec(plain) ?? [];
  const unit = unitNamed(word);
  return unit && before !== '' ? { name: before.trim(), unit } : { name: plain, unit: null };
}

function columnNamed(name: string): ListColumnName | null {
  for (const [column, names] of Object.entries(NAMES))
    if ((names as readonly string[]).includes(name)) return column as ListColumnName;
  return null;
}

/** The head of a list is its first row that is not empty. Gives its columns, or what is wrong with it. */
export function readListHead({ rows, separator }: CsvTable): ListHead | readonly ListProblem[] {
  const first = rows.findIndex((cells) => cells.some((cell) => cellText(cell) !== ''));
  const head = rows[first];
  if (!head)
    return [
      listProblem('empty-list', { row: null }, '', 'CSV with a head such as name,paper,width,height and rows below'),
    ];
  const row = first + 1;
  const titles = head.map(cellText);
  const columns = new Map<ListColumnName, FoundColumn>();
  const ignored: string[] = [];
  const problems: ListProblem[] = [];
  for (const [at, title] of titles.entries()) {
    const { name, unit } = nameOf(title);
    const column = columnNamed(name);
    if (!column) {
      if (title !== '' && !REPEATED.includes(name)) ignored.push(title);
      continue;
    }
    const known = columns.get(column);
    if (known)
      problems.push(
        listProblem(
          'repeated-column',
          { row, column: title },
          title,
          `one such column; ${JSON.stringify(known.title)} means the same`,
        ),
      );
    else columns.set(column, { at, title, unit });
  }
  const sides = columns.has('width') && columns.has('height');
  if (!sides && !columns.has('size')) {
    const missing = columns.has('width') ? 'height' : columns.has('height') ? 'width' : 'width, height';
    const what = `a head with the columns width and height, or size, separated by comma, semicolon or tab (here ${CSV_SEPARATORS[separator]}); missing: ${missing}`;
    problems.push(listProblem('missing-column', { row }, titles.join(', '), what));
  } else if (columns.has('size') && (columns.has('width') || columns.has('height'))) {
    const { title = 'size' } = columns.get('size') ?? {};
    problems.push(
      listProblem('repeated-column', { row, column: title }, title, 'either a size, or a width and a height, not both'),
    );
  }
  return problems.length > 0 ? problems : { row, columns, ignored, titles };
}
