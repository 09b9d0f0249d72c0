import { readFileSync } from 'node:fs';

function read(name) {
  return JSON.parse(readFileSync(new URL(`../data/cutting/${name}.json`, import.meta.url), 'utf8'));
}

/** Knapsacks without limits: `{ name, sheet, rotation, items: [w, h, value], optimal }`. Sources stand in the data files. */
export function unconstrained() {
  return ['knapsack-unconstrained', 'knapsack-unconstrained-large'].flatMap((file) =>
    Object.values(read(file)).flatMap(({ instances }) => instances),
  );
}

/** Knapsacks with limits: `{ family, name, sheet, items: [w, h, value, most], optimal, lower?, upper? }`. */
export function constrained() {
  return Object.entries(read('knapsack-constrained')).flatMap(([family, { instances }]) =>
    instances.map((instance) => ({ family, ...instance })),
  );
}

/** Cutting stock: `{ name, sheet, items: { w, h, demand }, known: { optimal, lower?, upper? } }`. */
export function stock() {
  return read('cutting-stock').instances;
}

/** Bin packing: as cutting stock, with `knownRotated`. */
export function packing() {
  return read('bin-packing').instances;
}

const NO_MARGINS = { top: 0, right: 0, bottom: 0, left: 0 };

/** The cut job of an instance with equal sheets without limit and a trimmer without rules. */
export function jobOf({ sheet, items }, turn) {
  return {
    trimmer: { bladeLength: null, narrowestStrip: 0, thinnestTrim: 0, kerf: 0, rulerStep: null, stoppedCuts: false },
    papers: [
      {
        id: 'sheet',
        width: sheet.w,
        height: sheet.h,
        sheets: null,
        directional: false,
        price: null,
        margins: NO_MARGINS,
      },
    ],
    blanks: items.map(({ w, h, demand }, index) => ({
      id: `b${index}`,
      width: w,
      height: h,
      quantity: demand,
      papers: null,
      turn,
    })),
  };
}
