import type { SheetLayout } from '../cut/plan.js';
import type { Length } from '../length/length.js';
import { firstCuts, type PlannedCut } from './cut-graph.js';
import { orderCuts } from './cut-order.js';
import { countSettings } from './steps.js';

/** How often the guide is set in the steps of a plan, and how often at least in any order of the same cuts. */
export interface FewestSettings {
  readonly settings: number;
  readonly least: number;
  /** True when the steps reach `least`: no order of these cuts sets the guide less often. */
  readonly proven: boolean;
}

/** What the branches of the trees say about the order of settings. */
interface Branches {
  /** The most separate times that one branch comes to each setting. */
  readonly times: Map<Length, number>;
  /** Settings of which some cut lies below a cut at the key's setting. */
  readonly below: Map<Length, Set<Length>>;
}

/** Walks every branch from the sheet down; `above` counts how often the branch has come to each setting. */
function walk(cut: PlannedCut, last: Length | null, above: Map<Length, number>, branches: Branches): void {
  const { setting, gate } = cut;
  const moved = setting !== last;
  const before = above.get(setting) ?? 0;
  if (moved) {
    above.set(setting, before + 1);
    branches.times.set(setting, Math.max(before + 1, branches.times.get(setting) ?? 0));
    for (const upper of above.keys()) {
      if (upper === setting) continue;
      const known = branches.below.get(upper) ?? new Set();
      branches.below.set(upper, known.add(setting));
    }
  }
  // What lies below a pinwheel is walked once, from one of its four cuts; leaving the others out keeps the bound valid.
  if (cut.stopped === null || cut.stopped === 'x1') for (const next of gate.next) walk(next, setting, above, branches);
  if (!moved) return;
  if (before === 0) above.delete(setting);
  else above.set(setting, before);
}

/** A ring of settings, each wanted before the next, as short as can be found from `start`; null when there is none. */
function ringFrom(start: Length, free: ReadonlySet<Length>, below: Branches['below']): readonly Length[] | null {
  const cameFrom = new Map<Length, Length>();
  const queue = [start];
  for (const at of queue) {
    for (const next of below.get(at) ?? []) {
      if (next === start) {
        const ring = [at];
        for (let back = at; back !== start; ) {
          back = cameFrom.get(back) ?? start;
          ring.push(back);
        }
        return ring;
      }
      if (!free.has(next) || cameFrom.has(next)) continue;
      cameFrom.set(next, at);
      queue.push(next);
    }
  }
  return null;
}

/**
 * The fewest settings that any order of these trees' cuts can have, as far as is proven cheaply. Each setting is set at
 * least as often as one branch comes back to it with another setting in between. Among the settings for which that is
 * once, a ring "a before b before … before a" needs one more; rings that share no setting add up. Kept valid, not tight.
 */
export function leastSettings(sheets: readonly SheetLayout[], kerf: Length): number {
  const branches: Branches = { times: new Map(), below: new Map() };
  for (const cut of firstCuts(sheets, kerf)) walk(cut, null, new Map(), branches);
  let least = 0;
  for (const times of branches.times.values()) least += times;
  const once = [...branches.times].filter(([, times]) => times === 1).map(([setting]) => setting);
  const free = new Set(once.sort((a, b) => b - a));
  for (const start of once) {
    if (!free.has(start)) continue;
    const ring = ringFrom(start, free, branches.below);
    if (!ring) continue;
    least += 1;
    for (const setting of ring) free.delete(setting);
  }
  return least;
}

/** How often the steps of these layouts set the guide, against the least that any order of the same cuts needs. */
export function fewestSettings(sheets: readonly SheetLayout[], kerf: Length): FewestSettings {
  const settings = countSettings(orderCuts(sheets, kerf));
  const least = leastSettings(sheets, kerf);
  return { settings, least, proven: settings === least };
}
