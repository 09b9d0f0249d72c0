import { assembly, safeFindings } from '@trimwell/sketch/assembly';
import { expect, test } from 'vitest';
import { type FlatPiece, flatCard } from '../../../../tests/kit/flat-card.js';
import { checkText } from './check-text.js';

/** The line of the last step of a flat card with those pieces. */
function lastStep(pieces: Readonly<Record<string, FlatPiece>>): string {
  const sketch = flatCard(pieces);
  const found = assembly(sketch);
  const lines = checkText(sketch, found, safeFindings(found)).split('\n');
  return lines[lines.findIndex((line) => line.startsWith('Thickest')) - 1] ?? '';
}

test('a step says what it is glued on, and over what there is a gap (by hand)', () => {
  // On a background alone; across the step of one paper, which it follows.
  expect(lastStep({ strip: { at: [1, 1, 2, 1] } })).toContain('glued flat on B background; then 0.9 mm');
  const across = { strip: { at: [1, 1, 1, 1] }, band: { at: [1 / 2, 1.25, 3, 1 / 2] } } as const;
  expect(lastStep(across)).toContain('glued flat on C strip; then 1.2 mm');
  expect(lastStep({ ...across, band: { at: [1.75, 1.25, 2, 1 / 2] } })).toContain(
    'glued flat on B background; then 1.2 mm',
  );
  // Over two rails on foam of 1/8 in: base, background, foam, rail and itself are 4.4 mm.
  const rails = {
    left: { at: [1 / 2, 1, 1 / 2, 3], foam: 1 / 8 },
    right: { at: [3, 1, 1 / 2, 3], foam: 1 / 8 },
    band: { at: [1 / 2, 2, 3, 1] },
  } as const;
  expect(lastStep(rails)).toContain('glued flat on C left and D right, with a gap over B; then 4.4 mm');
  // Mainly on what is higher, and free beside it.
  const edge = { plate: { at: [1, 1, 2, 2], foam: 1 / 8 }, flap: { at: [1.5, 1.5, 1, 2] } } as const;
  expect(lastStep(edge)).toContain('glued flat on C plate, with a gap over B; then 4.4 mm');
});
