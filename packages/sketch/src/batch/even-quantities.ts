/**
 * The most even quantities for roles that all contrast: `quantities[role][paper]` blanks, `cards` in each role, at most
 * `cards` of one paper, only papers that a role may have, and the least sum of squares. Going out from `start`, one
 * paper for each role, all different, blanks are moved around circles of roles and papers as long as that lowers the
 * sum, in steps that halve down to one; a convex flow without such a circle is the best there is (R. K. Ahuja, T. L.
 * Magnanti, J. B. Orlin, Network Flows, 1993, chapter 14).
 */
export function evenQuantities(
  lists: readonly (readonly number[])[],
  papers: number,
  start: readonly number[],
  cards: number,
): readonly (readonly number[])[] {
  const roles = lists.length;
  const allowed = lists.map((list) => new Set(list));
  const quantities = lists.map((_, role) =>
    Array.from({ length: papers }, (__, paper) => (start[role] === paper ? cards : 0)),
  );
  const loads = Array.from({ length: papers }, (_, paper) => (start.includes(paper) ? cards : 0));
  let step = 1;
  while (step * 2 <= cards) step *= 2;
  for (; step >= 1; step = Math.floor(step / 2)) {
    for (let circle = cheaper(step); circle; circle = cheaper(step)) {
      for (const { from, to } of circle) push(from, to, step);
    }
  }
  return quantities;

  /** Nodes: roles, then papers, then the pool of what a paper is not used for. */
  function arcs(size: number): readonly { from: number; to: number; cost: number }[] {
    const found: { from: number; to: number; cost: number }[] = [];
    for (let paper = 0; paper < papers; paper += 1) {
      const load = loads[paper] ?? 0;
      if (load + size <= cards) found.push({ from: roles + paper, to: roles + papers, cost: 0 });
      if (load >= size) found.push({ from: roles + papers, to: roles + paper, cost: 0 });
      for (let role = 0; role < roles; role += 1) {
        if (!allowed[role]?.has(paper)) continue;
        const quantity = quantities[role]?.[paper] ?? 0;
        found.push({ from: role, to: roles + paper, cost: size * (2 * quantity + size) });
        if (quantity >= size) found.push({ from: roles + paper, to: role, cost: size * (size - 2 * quantity) });
      }
    }
    return found;
  }

  function push(from: number, to: number, size: number): void {
    const role = Math.min(from, to);
    const paper = Math.max(from, to) === roles + papers ? role - roles : Math.max(from, to) - roles;
    if (Math.max(from, to) === roles + papers) {
      loads[paper] = (loads[paper] ?? 0) + (to === roles + papers ? size : -size);
      return;
    }
    const row = quantities[role];
    if (row) row[paper] = (row[paper] ?? 0) + (from === role ? size : -size);
  }

  /** A circle of arcs of negative cost, by the method of Bellman and Ford; null when there is none. */
  function cheaper(size: number): readonly { from: number; to: number }[] | null {
    const nodes = roles + papers + 1;
    const list = arcs(size);
    const distance = new Array<number>(nodes).fill(0);
    const arrived = new Array<{ from: number; to: number } | undefined>(nodes).fill(undefined);
    for (;;) {
      let lower = false;
      for (const arc of list) {
        const reached = (distance[arc.from] ?? 0) + arc.cost;
        if (reached >= (distance[arc.to] ?? 0)) continue;
        distance[arc.to] = reached;
        arrived[arc.to] = arc;
        lower = true;
      }
      if (!lower) return null;
      const circle = circleIn(arrived);
      if (circle) return circle;
    }
  }
}

/** A circle in the arcs by which nodes were reached, found by going back from every node once; null when there is none. */
function circleIn(
  arrived: readonly ({ readonly from: number; readonly to: number } | undefined)[],
): readonly { readonly from: number; readonly to: number }[] | null {
  const seen = new Array<number>(arrived.length).fill(-1);
  for (let start = 0; start < arrived.length; start += 1) {
    let at: number | undefined = start;
    while (at !== undefined && seen[at] === -1) {
      seen[at] = start;
      at = arrived[at]?.from;
    }
    if (at === undefined || seen[at] !== start) continue;
    const circle: { readonly from: number; readonly to: number }[] = [];
    for (let arc = arrived[at]; arc && (circle.length === 0 || arc.to !== at); arc = arrived[arc.from])
      circle.push(arc);
    return circle;
  }
  return null;
}

/** The sum of squares of the most even split of `total` into `parts`. */
export function evenSquares(total: number, parts: number): number {
  const low = Math.floor(total / parts);
  const more = total - low * parts;
  return more * (low + 1) ** 2 + (parts - more) * low ** 2;
}
