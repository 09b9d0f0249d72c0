import { BLADE_CAUTION, fileStem, sheetGuides, type TextFile, writePieceList } from '@trimwell/handout';
import { type BatchPlan, type Sketch, writeSketchText } from '@trimwell/sketch';

/** What is said beside guides that are to be cut. */
export const CAUTION = BLADE_CAUTION;

/** A file that the editor hands out, and what the button that saves it says. */
export interface Export {
  readonly label: string;
  readonly file: TextFile;
}

/**
 * Everything that can be saved: the document with its variations, and of what is shown with those that are on, the piece
 * lists and, once there is a plan, each sheet's guide.
 */
export function exportFiles(document: Sketch, sketch: Sketch, batch: BatchPlan | null): readonly Export[] {
  const stem = fileStem(sketch.title);
  const cards = batch?.cards ?? 1;
  const whole = { arrange: 'batch', cards } as const;
  const guides = batch ? sheetGuides(sketch, batch) : [];
  return [
    {
      label: 'The sketch, to open again (JSON)',
      file: { name: `${stem}.json`, type: 'application/json', text: writeSketchText(document) },
    },
    {
      label: `Piece list for ${cards === 1 ? '1 card' : `${cards} cards`} (CSV)`,
      file: { ...writePieceList(sketch, whole, 'csv'), name: `${stem}-pieces-${cards}.csv` },
    },
    { label: 'Piece list for one card (CSV)', file: writePieceList(sketch, { arrange: 'card' }, 'csv') },
    {
      label: 'Piece list (JSON)',
      file: { ...writePieceList(sketch, whole, 'json'), name: `${stem}-pieces.json` },
    },
    ...guides.map(
      (file): Export => ({
        label: `Guide ${file.name.replace(`${stem}-`, '').replace('.svg', '')} at true size (SVG)`,
        file,
      }),
    ),
  ];
}
