import { ticks } from '../length/length.js';
import type { KindPlace, NestDraft, NestTask } from './nest-draft.js';
import type { NestJob, NestLayout, NestPart, NestPlace } from './nest-job.js';

/** Gives every place the name of a part; how many of each part are still to be named. */
type Wanted = Map<string, number>;

function byPlace(a: NestPlace, b: NestPlace): number {
  return a.y - b.y || a.x - b.x;
}

function placeOf(task: NestTask, job: NestJob, { kind, x, y, turned }: KindPlace, part: NestPart): NestPlace {
  const size = task.kinds[kind] ?? { width: 0, height: 0 };
  const width = turned ? size.height : size.width;
  const { margins } = job.sheet;
  return {
    part: part.id,
    x: ticks(margins.left + x),
    y: ticks(margins.top + y),
    turned: width !== part.width + job.gap,
  };
}

/**
 * Names for the places of one sheet that hold for as many of `copies` as can be: each place takes the part of its kind
 * of which most are wanted. How many sheets can be named so is what comes back with them, at least 1.
 */
function nameSheet(
  task: NestTask,
  job: NestJob,
  places: readonly KindPlace[],
  copies: number,
  wanted: Wanted,
): NestLayout {
  let most = copies;
  for (;;) {
    const left = new Map(wanted);
    const named: NestPlace[] = [];
    let short = 0;
    for (const place of places) {
      const members = task.kinds[place.kind]?.members ?? [];
      const counts = members.map(({ id }) => left.get(id) ?? 0);
      const highest = Math.max(...counts);
      if (highest < most) {
        short = highest;
        break;
      }
      // The part that comes out even is taken first, so that the next sheets are not parted for its rest.
      const even = counts.indexOf(most);
      const id = members[even >= 0 ? even : counts.indexOf(highest)]?.id ?? '';
      left.set(id, (left.get(id) ?? 0) - most);
      const part = job.parts.find((candidate) => candidate.id === id);
      if (part) named.push(placeOf(task, job, place, part));
    }
    if (named.length === places.length) {
      for (const [id, count] of left) wanted.set(id, count);
      return { copies: most, places: named.sort(byPlace) };
    }
    // Two places may share the last ones of a part: one sheet at least can always be named.
    most = Math.max(1, short < most ? short : most - 1);
  }
}

/** The layouts of `draft` with the parts' own names, sheets alike as copies; and what no place was left for. */
export function namePlaces(
  task: NestTask,
  job: NestJob,
  draft: NestDraft,
): { readonly layouts: readonly NestLayout[]; readonly left: ReadonlyMap<string, number> } {
  const wanted: Wanted = new Map(
    task.kinds.flatMap(({ members }) => members.map(({ id, quantity }) => [id, quantity])),
  );
  const layouts = new Map<string, NestLayout>();
  const inOrder = [...draft.sheets].sort((a, b) => b.copies - a.copies);
  for (const { copies, places } of inOrder) {
    let over = copies;
    while (over > 0) {
      const layout = nameSheet(task, job, places, over, wanted);
      over -= layout.copies;
      const key = JSON.stringify(layout.places);
      layouts.set(key, { ...layout, copies: layout.copies + (layouts.get(key)?.copies ?? 0) });
    }
  }
  const left = new Map([...wanted].filter(([, count]) => count > 0));
  return { layouts: [...layouts.values()], left };
}
