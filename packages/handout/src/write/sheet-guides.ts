import { inches } from '@trimwell/geometry';
import { type BatchPlan, centreOf, type Sketch } from '@trimwell/sketch';
import { labelPieces } from '../draw/labels.js';
import { drawSheet } from '../draw/sheet.js';
import { writeSvg } from './svg.js';

/** A file to be saved. */
export interface TextFile {
  readonly name: string;
  readonly type: string;
  readonly text: string;
}

/** A file name of plain letters: what is none becomes a hyphen. */
export function fileStem(title: string): string {
  const plain = title
    .replace(/ß/g, 'ss')
    .replace(/[æÆ]/g, 'ae')
    .replace(/[œŒ]/g, 'oe')
    .replace(/[øØ]/g, 'o')
    .replace(/[łŁ]/g, 'l')
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
  return plain === '' ? 'sketch' : plain.slice(0, 60);
}

/**
 * The cutting guide of each sheet layout of a plan as an SVG at true size, one file each: the view is the sheet itself,
 * so that printed at 100 % on a sheet of that size every cut lies where it belongs. The centre of a piece is a small sheet.
 */
export function sheetGuides(sketch: Sketch, batch: BatchPlan): readonly TextFile[] {
  const labels = labelPieces(sketch);
  return batch.papers.flatMap(({ paper: id, job, plan }) => {
    const paper = sketch.papers.find((candidate) => candidate.id === id);
    if (!paper) return [];
    return plan.sheets.map((layout, index): TextFile => {
      const centre = centreOf(layout.paper);
      const piece = sketch.pieces.find((each) => each.id === centre);
      const called = piece ? `${paper.name}, the centre of ${labels.get(piece.id)} ${piece.name}` : paper.name;
      const drawing = drawSheet(
        layout,
        { ...paper, name: called },
        {
          style: { unit: sketch.unit },
          labels,
          size: inches(1) / 5,
          kerf: job.trimmer.kerf,
        },
      );
      const box = { x: 0, y: 0, width: layout.width, height: layout.height };
      const of = centre === null ? id : `${id}-centre-of-${centre}`;
      const name = `${fileStem(sketch.title)}-${of}-${index + 1}${layout.copies > 1 ? `-x${layout.copies}` : ''}.svg`;
      return { name, type: 'image/svg+xml', text: writeSvg(drawing, { unit: sketch.unit, box }) };
    });
  });
}
