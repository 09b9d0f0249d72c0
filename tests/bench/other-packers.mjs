import { packer } from 'guillotine-packer';

/**
 * Sheets that guillotine-packer 1.0.2 uses: the bins of the best of all its 36 sortings, selections and splittings (its default).
 * It turns all rectangles or none; `turn` says which. `items` are `{ w, h, demand }`.
 */
export function packedSheets(sheet, items, turn) {
  const each = items.flatMap(({ w, h, demand }) => Array.from({ length: demand }, () => ({ width: w, height: h })));
  if (each.length === 0) return 0;
  const bins = packer({ binWidth: sheet.w, binHeight: sheet.h, items: each }, { allowRotation: turn });
  const packed = bins.reduce((sum, bin) => sum + bin.length, 0);
  if (packed !== each.length) throw new Error(`guillotine-packer packed ${packed} of ${each.length}`);
  return bins.length;
}

/**
 * Sheets that shelves use, first fit decreasing: rectangles that may turn lie on their longer side where that fits, all are sorted from
 * high to low, and each goes to the first shelf with room, else to a new shelf on the first sheet with room. The first rectangle
 * of a shelf is its highest, so every shelf is cut edge to edge. `items` are `{ w, h, demand, turn }`.
 */
export function shelvedSheets(sheet, items) {
  const each = items
    .flatMap(({ w, h, demand, turn }) => {
      const ways = [{ w, h }, ...(turn ? [{ w: h, h: w }] : [])].filter((way) => way.w <= sheet.w && way.h <= sheet.h);
      if (ways.length === 0) throw new Error(`${w} x ${h} is larger than the sheet ${sheet.w} x ${sheet.h}`);
      const [lying] = ways.sort((a, b) => a.h - b.h);
      return Array.from({ length: demand }, () => lying);
    })
    .sort((a, b) => b.h - a.h || b.w - a.w);
  const sheets = [];
  const shelves = [];
  for (const { w, h } of each) {
    let shelf = shelves.find(({ left }) => left >= w);
    if (!shelf) {
      let page = sheets.find(({ left }) => left >= h);
      if (!page) {
        page = { left: sheet.h };
        sheets.push(page);
      }
      page.left -= h;
      shelf = { left: sheet.w };
      shelves.push(shelf);
    }
    shelf.left -= w;
  }
  return sheets.length;
}
