import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type CutNode, eachNode } from '../cut/cut-tree.js';
import type { SheetLayout } from '../cut/plan.js';
import { type Length, ticks } from '../length/length.js';
import { fewestSettings, leastSettings } from './fewest-settings.js';

const OFFCUT: CutNode = { is: 'offcut' };

function layout(tree: CutNode, side: number): SheetLayout {
  const [width, height] = [ticks(side), ticks(side)];
  return { paper: 'a', copies: 1, width, height, usable: { x: ticks(0), y: ticks(0), width, height }, tree };
}

/** A sheet from which strips of `widths` are cut one after the other. */
function strips(...widths: readonly number[]): SheetLayout {
  const tree = widths.reduceRight<CutNode>(
    (second, at) => ({ is: 'cut', direction: 'vertical', at: ticks(at), first: OFFCUT, second }),
    OFFCUT,
  );
  return layout(tree, 100);
}

/** The fewest settings of all orders, by trying every setting at every turn; trees without pinwheels. */
function trueLeast(sheets: readonly SheetLayout[]): number {
  type Open = readonly CutNode[];
  const cuts = (nodes: Open): Open => nodes.filter(({ is }) => is === 'cut');
  const key = (open: Open): string =>
    open
      .map((node) => JSON.stringify(node))
      .sort()
      .join();
  const exhaust = (open: Open, setting: Length): Open =>
    open.flatMap((node): Open => {
      if (node.is !== 'cut' || node.at !== setting) return [node];
      return exhaust(cuts([node.first, node.second]), setting);
    });
  let front = new Map([[key([]), cuts(sheets.map(({ tree }) => tree))]]);
  for (let settings = 0; ; settings += 1) {
    const next = new Map<string, Open>();
    for (const open of front.values()) {
      if (open.length === 0) return settings;
      for (const setting of new Set(open.flatMap((node) => (node.is === 'cut' ? [node.at] : [])))) {
        const rest = exhaust(open, setting);
        next.set(key(rest), rest);
      }
    }
    front = next;
  }
}

/** Sheets with up to five cuts below one another, at few settings, so that these meet often. */
const randomSheets = fc
  .array(
    fc.letrec<{ node: CutNode }>((tie) => ({
      node: fc.oneof(
        { depthSize: 'medium', maxDepth: 5 },
        fc.constant(OFFCUT),
        fc.record({
          is: fc.constant('cut' as const),
          direction: fc.constantFrom('vertical' as const, 'horizontal' as const),
          at: fc.integer({ min: 1, max: 5 }).map(ticks),
          first: tie('node'),
          second: tie('node'),
        }),
      ),
    })).node,
    { minLength: 1, maxLength: 3 },
  )
  .map((trees) => trees.map((tree) => layout(tree, 100)))
  // A tree may ask for a cut that misses its part.
  .filter((sheets) => sheets.every((sheet) => fits(sheet)));

function fits({ tree, usable }: SheetLayout): boolean {
  try {
    eachNode(tree, usable, ticks(0), () => undefined);
    return true;
  } catch (error) {
    if (error instanceof RangeError) return false;
    throw error;
  }
}

test('no order of the cuts has fewer settings than the bound, and a proof is never wrong', () => {
  let proofs = 0;
  fc.assert(
    fc.property(randomSheets, (sheets) => {
      const { settings, least, proven } = fewestSettings(sheets, ticks(0));
      const truth = trueLeast(sheets);
      expect(least).toBeLessThanOrEqual(truth);
      expect(settings).toBeGreaterThanOrEqual(truth);
      expect(proven).toBe(settings === least);
      if (proven) proofs += 1;
    }),
    { numRuns: 300 },
  );
  expect(proofs).toBeGreaterThan(200);
});

test('a branch that comes back to a setting needs it again; every setting is needed once', () => {
  expect(leastSettings([strips(4, 4, 3, 3, 2)], ticks(0))).toBe(3);
  expect(leastSettings([strips(4, 3, 4)], ticks(0))).toBe(3);
  expect(leastSettings([strips(4, 3, 4, 3, 4)], ticks(0))).toBe(5);
  expect(fewestSettings([strips(4, 3, 4), strips(3, 4)], ticks(0))).toEqual({ settings: 3, least: 3, proven: true });
});

test('two sheets that want the same two settings in opposite order need one of them twice', () => {
  expect(fewestSettings([strips(4, 3), strips(3, 4)], ticks(0))).toEqual({ settings: 3, least: 3, proven: true });
  expect(leastSettings([strips(4, 3), strips(3, 4), strips(9, 8), strips(8, 9)], ticks(0))).toBe(6);
});

test('a setting that is done with for good comes before one that is wanted again', () => {
  // Widest first would set 8, then 6, then 8 again.
  const sheets = [strips(8), strips(6, 8)];
  expect(fewestSettings(sheets, ticks(0))).toEqual({ settings: 2, least: 2, proven: true });
});
