import { expectSketch, withVariations } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { exportFiles } from './export.js';

test('the file to open again holds the document, the piece list what is shown', () => {
  const document = {
    ...sampleSketch(),
    variations: [{ id: 'bare', name: 'Bare', note: '', edits: [{ do: 'remove-piece', piece: 'strip' } as const] }],
  };
  const { sketch } = withVariations(document, ['bare']);
  const files = exportFiles(document, sketch, null).map(({ file }) => file);
  const text = (end: string) => files.find(({ name }) => name.endsWith(end))?.text ?? '';
  expect(expectSketch(JSON.parse(text('.json')))).toEqual(document);
  expect(text('-pieces.csv')).not.toContain('Strip');
  expect(text('-pieces.csv')).toContain('Panel');
});
