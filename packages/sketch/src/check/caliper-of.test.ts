import { millimetres } from '@trimwell/geometry';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import type { Paper } from '../model/sketch.js';
import { caliperOf } from './caliper-of.js';
import { estimateCaliper } from './estimate-caliper.js';

test('a measured caliper is taken as it is; a weight and a kind give estimates', () => {
  expect(estimateCaliper({ caliper: millimetres(0.4), gsm: 300, kind: 'kraft' })).toEqual({
    caliper: 256,
    estimated: false,
  });
  // 1000 g/m2 at 1.3 cm3/g are 1.3 mm (by hand).
  expect(estimateCaliper({ gsm: 1000, kind: 'cardstock' })).toEqual({ caliper: millimetres(1.3), estimated: true });
  expect(estimateCaliper({ kind: 'vellum' }).estimated).toBe(true);
  expect(estimateCaliper({ kind: 'vellum' }).caliper).toBeLessThan(estimateCaliper({ kind: 'cardstock' }).caliper);
});

test('of a mix the thickest paper counts', () => {
  const sketch = sampleSketch();
  const [thin, thick] = [
    { ...sketch.papers[0], id: 'thin', caliper: millimetres(0.1) } as Paper,
    { ...sketch.papers[0], id: 'thick', caliper: millimetres(0.4) } as Paper,
  ];
  const papers = { papers: [thin, thick], mixes: [{ id: 'both', name: 'Both', papers: ['thin', 'thick'] }] };
  expect(caliperOf(papers, 'both')).toEqual({ caliper: millimetres(0.4), estimated: false });
  expect(caliperOf(papers, 'thin')).toEqual({ caliper: millimetres(0.1), estimated: false });
});
