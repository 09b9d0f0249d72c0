import type { Item } from '../../drawing/drawing.js';

/** How far the layers of a shadow fall, as shares of its length: each is as pale, so that the shadow fades outwards. */
const LAYERS = [0.3, 0.6, 1];

interface Shadows {
  /** How far a shadow falls to the right and down, in ticks. */
  readonly length: number;
  /** Pieces that stand on foam, whose shadow falls farther. */
  readonly raised: ReadonlySet<string>;
}

/**
 * Items with their shadows cast to the right and down, however they are turned, in a few pale layers and no filter, so that
 * every program draws them alike.
 */
export function castShadows(items: readonly Item[], shadows: Shadows, turned = 0): readonly Item[] {
  const [cos, sin] = [Math.cos((-turned * Math.PI) / 180), Math.sin((-turned * Math.PI) / 180)];
  return items.flatMap((item): readonly Item[] => {
    if (item.kind === 'group') return [{ ...item, items: castShadows(item.items, shadows, turned + item.turn) }];
    if (item.role !== 'shadow') return [item];
    const far = shadows.length * (item.piece !== undefined && shadows.raised.has(item.piece) ? 2.2 : 1);
    return LAYERS.map((share): Item => {
      const [x, y] = [far * share * 0.6, far * share];
      const move = { x: x * cos - y * sin, y: x * sin + y * cos };
      const key = `${item.key}:${share}`;
      return { kind: 'group', key, role: 'shadow', origin: { x: 0, y: 0 }, move, turn: 0, items: [item] };
    });
  });
}
