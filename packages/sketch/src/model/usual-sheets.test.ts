import { formatSize, inches, millimetres } from '@trimwell/geometry';
import { expect, test } from 'vitest';
import { USUAL_SHEETS, usualSheetOf, usualSheets } from './usual-sheets.js';

test('sizes are those of their sources', () => {
  const size = (name: string) => {
    const sheet = USUAL_SHEETS.find((one) => one.name.startsWith(name));
    return sheet && [sheet.width, sheet.height];
  };
  // ISO 216, table 1: A3 297 x 420, A4 210 x 297, A5 148 x 210, in millimetres; a millimetre is 640 ticks.
  expect(size('A3')).toEqual([297 * 640, 420 * 640]);
  expect(size('A4')).toEqual([210 * 640, 297 * 640]);
  expect(size('A5')).toEqual([148 * 640, 210 * 640]);
  // ASME Y14.1, size A, in inches; an inch is 16256 ticks.
  expect(size('Letter')).toEqual([8.5 * 16256, 11 * 16256]);
  expect(size('12 × 12')).toEqual([12 * 16256, 12 * 16256]);
  expect(size('305')).toEqual([305 * 640, 305 * 640]);
});

test('each sheet is named by its own size, in its own unit', () => {
  for (const sheet of USUAL_SHEETS) {
    expect(sheet.name).toContain(formatSize(sheet, { unit: sheet.unit }).replace('⁄', '/'));
  }
});

test('sheets named in the wanted unit come first, and none is lost', () => {
  expect(usualSheets('in')[0]?.name).toBe('12 × 12 in');
  expect(usualSheets('mm').map(({ unit }) => unit)).toEqual(['mm', 'mm', 'mm', 'mm', 'in', 'in', 'in', 'in']);
  expect(new Set(usualSheets('mm'))).toEqual(new Set(USUAL_SHEETS));
});

test('a size is known upright and lying, and only when it is exact', () => {
  expect(usualSheetOf({ width: inches(11), height: inches(8.5) })?.name).toBe('Letter, 8 1/2 × 11 in');
  expect(usualSheetOf({ width: millimetres(210), height: millimetres(297) })?.name).toBe('A4, 210 × 297 mm');
  expect(usualSheetOf({ width: inches(12), height: millimetres(305) })).toBeNull();
});
