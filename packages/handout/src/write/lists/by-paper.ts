import { formatSize, type Length, type LengthStyle, type Unmade, writeLength } from '@trimwell/geometry';
import {
  type BatchPlan,
  batchRecipe,
  CARD_BASE,
  counted,
  cutJobs,
  type Paper,
  type PaperJob,
  type PaperPlan,
  pieceOfBlank,
  realSheets,
  type Sketch,
} from '@trimwell/sketch';
import { labelOfBlank, labelPieces } from '../../draw/labels.js';
import { AREA_UNITS, type Area, areaNumber, areaOf, areaText } from './area.js';
import type { ListColumn, ListContent, ListTable } from './list-content.js';
import { decimals, unitLine } from './piece-list.js';

/** What one paper gives: all lengths in ticks. */
interface PaperList {
  readonly paper: Paper;
  readonly rows: readonly PaperRow[];
  readonly area: Area;
  readonly needed: { readonly sheets: number; readonly proven: boolean } | null;
  readonly unmade: readonly Unmade[];
}

interface PaperRow {
  readonly label: string;
  readonly id: string;
  readonly name: string;
  readonly kind: string;
  readonly width: Length;
  readonly height: Length;
  readonly quantity: number;
  readonly area: Area;
}

function isPlanned(job: PaperJob | PaperPlan): job is PaperPlan {
  return 'plan' in job;
}

function paperLists(sketch: Sketch, jobs: readonly (PaperJob | PaperPlan)[]): readonly PaperList[] {
  const labels = labelPieces(sketch);
  return jobs.flatMap((each): PaperList[] => {
    const paper = sketch.papers.find(({ id }) => id === each.paper);
    if (!paper) return [];
    const rows = each.job.blanks.map(({ id, width, height, quantity }): PaperRow => {
      const piece = sketch.pieces.find((candidate) => candidate.id === pieceOfBlank(id));
      return {
        label: labelOfBlank(labels, id),
        id: piece?.id ?? CARD_BASE,
        name: piece?.name ?? 'Card base',
        kind: piece?.kind ?? 'card base',
        width,
        height,
        quantity,
        area: areaOf({ width, height }, quantity),
      };
    });
    const plan = isPlanned(each) ? each.plan : null;
    return [
      {
        paper,
        rows,
        area: rows.reduce((sum, row) => sum + row.area, 0n),
        needed: plan && { sheets: realSheets(plan), proven: plan.proof.fewestSheets },
        unmade: plan?.unmade ?? [],
      },
    ];
  });
}

const COLUMNS: readonly ListColumn[] = [
  { title: 'Letter', align: 'start' },
  { title: 'Piece', align: 'start', breaks: true },
  { title: 'Kind', align: 'start' },
  { title: 'Cut', align: 'start' },
  { title: 'Quantity', align: 'end' },
  { title: 'Area', align: 'end' },
];

function tableOf({ paper, rows, area, needed, unmade }: PaperList, sketch: Sketch): ListTable {
  const { unit } = sketch;
  const style: LengthStyle = { unit };
  const hand = paper.sheets === undefined ? '' : `, ${paper.sheets} at hand`;
  const turn = paper.directional ? ', its print has an up' : '';
  const proof = needed?.proven ? ' (no plan needs fewer)' : '';
  const labels = labelPieces(sketch);
  return {
    heading: paper.name,
    lines: [
      `Sheets of ${formatSize(paper, style)}${hand}${turn}.`,
      ...(needed ? [`Sheets needed: ${needed.sheets}${proof}.`] : []),
      `All pieces together: ${areaText(area, unit)}; one sheet: ${areaText(areaOf(paper, 1), unit)}.`,
      ...unmade.map(
        ({ blank, quantity, reason }) => `Not made: ${quantity} of ${labelOfBlank(labels, blank)}, ${reason}.`,
      ),
    ],
    columns: COLUMNS,
    rows: rows.map((row) => [
      row.label,
      row.name,
      row.kind,
      formatSize(row, { ...style, bare: true }),
      String(row.quantity),
      areaText(row.area, unit),
    ]),
  };
}

const HEAD = [
  'paper',
  'sheet width',
  'sheet height',
  'sheets at hand',
  'sheets needed',
  'label',
  'name',
  'kind',
  'blank width',
  'blank height',
  'blank width in',
  'blank height in',
  'blank width mm',
  'blank height mm',
  'quantity',
];

/** Plain letters, because spreadsheets guess how a file spells others. */
const AREA_HEAD = { in: 'area square in', mm: 'area square cm' } as const;

function recordsOf({ paper, rows, needed }: PaperList, sketch: Sketch): readonly (readonly (string | number)[])[] {
  const length = (value: Length): string => writeLength(value, sketch.unit);
  return rows.map(({ label, name, kind, width, height, quantity, area }) => {
    const [inchWidth, mmWidth] = decimals(width);
    const [inchHeight, mmHeight] = decimals(height);
    return [
      ...[paper.name, length(paper.width), length(paper.height), paper.sheets ?? '', needed?.sheets ?? ''],
      ...[label, name, kind, length(width), length(height)],
      ...[inchWidth, inchHeight, mmWidth, mmHeight, quantity, areaNumber(area, sketch.unit)],
    ];
  });
}

function documentOf({ paper, rows, area, needed, unmade }: PaperList, sketch: Sketch): object {
  const { unit } = sketch;
  const length = (value: Length): string => writeLength(value, unit);
  return {
    id: paper.id,
    name: paper.name,
    sheet: { width: length(paper.width), height: length(paper.height) },
    sheetsAtHand: paper.sheets ?? null,
    sheetsNeeded: needed?.sheets ?? null,
    fewestSheets: needed?.proven ?? null,
    area: areaNumber(area, unit),
    pieces: rows.map(({ width, height, area: own, ...row }) => ({
      ...row,
      blankWidth: length(width),
      blankHeight: length(height),
      area: areaNumber(own, unit),
    })),
    unmade,
  };
}

/**
 * The pieces of `cards` cards by the paper that they are cut from, each paper with its sheets and the area of its pieces,
 * and with the sheets that `plan` needs. Papers of a mix have what is dealt to them; a paper that gives nothing is left out.
 * @throws RangeError when `plan` is for another number of cards
 */
export function listByPaper(sketch: Sketch, cards: number, plan?: BatchPlan): ListContent {
  if (plan && plan.cards !== cards)
    throw new RangeError(`cards is ${cards}; allowed: ${plan.cards}, the cards of the plan.`);
  const { unit, title } = sketch;
  const lists = paperLists(sketch, plan?.papers ?? cutJobs(batchRecipe(sketch), cards));
  return {
    title: `${title}: papers for ${counted(cards, 'card')}`,
    lines: [unitLine(unit)],
    tables: lists.map((list) => tableOf(list, sketch)),
    records: [[...HEAD, AREA_HEAD[unit]], ...lists.flatMap((list) => recordsOf(list, sketch))],
    document: {
      trimwellPapers: 1,
      title,
      unit,
      areaUnit: AREA_UNITS[unit],
      cards,
      complete: plan?.complete ?? null,
      papers: lists.map((list) => documentOf(list, sketch)),
    },
  };
}
