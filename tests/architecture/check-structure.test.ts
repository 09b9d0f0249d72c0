import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { checkFile, checkStructure, importsOf } from './check-structure.mjs';

test('imports run one way in the whole tree', () => {
  expect(checkStructure(fileURLToPath(new URL('../..', import.meta.url)))).toEqual([]);
});

test('an import against the direction is named, whatever its form', () => {
  expect(checkFile('geometry', 'cut/plan.ts', "import { a } from '@trimwell/sketch';")).toHaveLength(1);
  expect(checkFile('geometry', 'length/length.ts', "import type { Rect } from '../rect/rect.js';")).toHaveLength(1);
  expect(checkFile('sketch', 'model/sketch.ts', "export * from '../batch/recipe.js';")).toHaveLength(1);
  expect(checkFile('editor', 'state/state.ts', "const late = await import('../view/editor.js');")).toHaveLength(1);
  expect(checkFile('handout', 'write/svg.ts', "import { readFileSync } from 'node:fs';")).toHaveLength(1);
  expect(checkFile('embed', 'sketch.ts', "import { TrimwellEditor } from '@trimwell/editor';")).toHaveLength(1);
  expect(checkFile('geometry', 'rect/rect.ts', "import { type Length, ticks } from '../length/length.js';")).toEqual(
    [],
  );
});

test('every way of importing is seen', () => {
  const source =
    "import 'a';\nimport { b } from 'b';\nexport * from 'c';\nconst d = import('d');\nnew URL('./e.js', import.meta.url);";
  expect(importsOf(source)).toEqual(['a', 'b', 'c', 'd', './e.js']);
});
