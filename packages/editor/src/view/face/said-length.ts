import { formatLength, type Length, type Unit } from '@trimwell/geometry';

/** Plain figures for ears: `3 3/4` with an ordinary slash is read better than a drawn fraction. */
export function said(length: Length, unit: Unit): string {
  return formatLength(length, { unit, bare: true }).replaceAll('⁄', '/');
}

/** The unit of figures that are said. */
export function unitName(unit: Unit): string {
  return unit === 'in' ? 'inches' : 'millimetres';
}
