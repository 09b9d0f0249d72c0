import { formatSize, type Unit } from '@trimwell/geometry';
import { BLADE_CAUTION, MACHINE_CAUTION } from '../cautions.js';
import type { TextFile } from '../sheet-guides.js';
import type { CutFile, CutPaperSheets } from './cut-files.js';

/** What a page says of itself in the list of files. */
function fileLine({ name, copies, width, height }: CutFile, unit: Unit): string {
  return `  ${name}: ${copies === 1 ? 'once' : `${copies} times`}; the file is ${formatSize({ width, height }, { unit })}`;
}

function paperLines({ name, sheets, proof, unmade }: CutPaperSheets): readonly string[] {
  // What is proven holds for the boxes around the pieces; round pieces may lie closer, which is not tried.
  const fewest = proof.fewestSheets ? ', the fewest for upright boxes around the pieces' : '';
  return [
    `  ${name}: ${sheets === 1 ? '1 sheet' : `${sheets} sheets`}${fewest}.`,
    ...unmade.map(({ name: piece, quantity, reason }) => `    NOT in the files: ${quantity} of ${piece} (${reason}).`),
  ];
}

/** The text that goes with the files: what is cut how often, how to check the size, how to score, and the cautions. */
export function readMe(
  title: string,
  unit: Unit,
  {
    cards,
    files,
    papers,
  }: { readonly cards: number; readonly files: readonly CutFile[]; readonly papers: readonly CutPaperSheets[] },
): TextFile {
  const widest = files.reduce((most, { reach }) => Math.max(most, reach.width), 0);
  const first = files.find(({ reach }) => reach.width === widest);
  const scored = files.some(({ scores }) => scores > 0);
  const lines = [
    title,
    `Files for a cutting machine, for ${cards === 1 ? '1 card' : `${cards} cards`}.`,
    '',
    'Cut these files so often:',
    ...files.map((file) => fileLine(file, unit)),
    ...(papers.length > 0
      ? ['', 'Sheets (centres of pieces that others cover are not used here):', ...papers.flatMap(paperLines)]
      : []),
    '',
    'Check the size before you cut:',
    ...(first
      ? [
          `  Everything is at true size, in ${unit === 'in' ? 'inches' : 'millimetres'}. Open ${first.name}`,
          `  and select all of it: it must measure ${formatSize(first.reach, { unit })}. If it does not, set the unit of the`,
          '  import, and do not let the program fit the drawing to the mat.',
        ]
      : ['  There is no file: nothing of this can be cut.']),
    '',
    'Lines:',
    '  Solid lines (group or layer "cut") are cut. Inner holes come before the outline around them.',
    ...(scored
      ? [
          '  Dashed lines (group or layer "score") are scored, not cut: use a scoring tool, or score them by hand, and',
          '  score before the outline is cut, while the sheet still holds the piece.',
        ]
      : []),
    '',
    BLADE_CAUTION,
    MACHINE_CAUTION,
    '',
  ];
  return { name: 'read-me.txt', type: 'text/plain', text: lines.join('\n') };
}
