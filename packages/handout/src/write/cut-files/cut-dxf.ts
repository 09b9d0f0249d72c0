import { DxfWriter, LWPolylineFlags, point2d, point3d, Units } from '@tarikjabiri/dxf';
import type { Outline, Point, Unit } from '@trimwell/geometry';
import { bulgeVertices } from './bulge.js';
import { type CutPage, LINE_KINDS, SCORE_DASH } from './cut-page.js';
import { inUnit } from './figure.js';

const MM_PER_INCH = 25.4;
const DASHED = 'DASHED';

/** Numbers of the standard's colour table that come nearest to the colours of `LINE_KINDS`. */
const COLOUR_NUMBERS = { cut: 232, score: 142 } as const;

/** A millionth of an inch or of a millimetre, and never so small that it would be written with an exponent. */
function rounded(value: number): number {
  if (!Number.isFinite(value)) throw new RangeError(`${value} is no figure for a drawing.`);
  const near = Math.round(value * 1e6) / 1e6;
  return near === 0 ? 0 : near;
}

/** Bulges have nine decimals: a tenth of a nanometre at the middle of a 12 in arc. */
function roundedBulge(bulge: number): number {
  const near = Math.round(bulge * 1e9) / 1e9;
  return Math.abs(near) < 1e-6 ? 0 : near;
}

/**
 * A page as a DXF drawing (AC1021, which is the form of 2007) at true size, y upward, the sheet's lower left corner at
 * the origin. Every outline is one closed LWPOLYLINE on the layer CUT, its arcs as bulges; scores are dashed lines on
 * the layer SCORE. The limits are the sheet. The library numbers its records anew for each drawing, so that equal pages
 * give equal bytes.
 */
export function writeCutDxf(page: CutPage, unit: Unit): string {
  const drawing = new DxfWriter();
  const inches = unit === 'in';
  const [width, height] = [inUnit(page.width, unit), inUnit(page.height, unit)].map(rounded) as [number, number];
  const place = ({ x, y }: Point) => ({ x: rounded(inUnit(x, unit)), y: rounded(inUnit(page.height - y, unit)) });
  const millimetres = (length: number): number => (inches ? length / MM_PER_INCH : length);
  drawing.setUnits(inches ? Units.Inches : Units.Millimeters);
  drawing.setVariable('$MEASUREMENT', { 70: inches ? 0 : 1 });
  drawing.setVariable('$LASTSAVEDBY', { 1: 'trimwell' });
  drawing.setVariable('$LIMMIN', { 10: 0, 20: 0 });
  drawing.setVariable('$LIMMAX', { 10: width, 20: height });
  const [dash, gap] = SCORE_DASH.map(millimetres) as [number, number];
  drawing.addLType(DASHED, 'Dashed __ __ __', [rounded(dash), rounded(-gap)]);
  drawing.addLayer(LINE_KINDS.score.layer, COLOUR_NUMBERS.score, DASHED);
  drawing.addLayer(LINE_KINDS.cut.layer, COLOUR_NUMBERS.cut, 'Continuous');
  for (const [from, to] of page.score) {
    const [a, b] = [place(from), place(to)];
    drawing.addLine(point3d(a.x, a.y), point3d(b.x, b.y), { layerName: LINE_KINDS.score.layer });
  }
  const addOutline = (outline: Outline): void => {
    const vertices = bulgeVertices(outline).map((vertex) => {
      const { x, y } = place(vertex);
      return { point: point2d(x, y), bulge: roundedBulge(vertex.bulge) };
    });
    drawing.addLWPolyline(vertices, { flags: LWPolylineFlags.Closed, layerName: LINE_KINDS.cut.layer });
  };
  page.cut.forEach(addOutline);
  return drawing.document.stringify();
}
