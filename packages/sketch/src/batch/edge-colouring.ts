/**
 * Colours the edges of a bipartite multigraph of roles and papers with one colour per card, so that no two edges of one
 * colour meet: `quantities[role][paper]` edges join a role to a paper. Returns `dealt[role][card]`, the paper that each
 * card gets in each role.
 *
 * By König's theorem (D. König, Über Graphen und ihre Anwendung auf Determinantentheorie und Mengenlehre, Mathematische
 * Annalen 77, 1916, 453-465) a bipartite multigraph can be coloured with as many colours as its largest degree. Edge by
 * edge: a colour free at the role and one free at the paper are exchanged along the alternating path (Kempe chain) that
 * leaves the paper; it cannot come back to the role, because the graph is bipartite. Cost: edges times the path's length
 * (at most all roles and papers) plus the look for a free colour (at most `cards`).
 *
 * @throws RangeError when a role has not exactly `cards` edges, or a paper has more.
 */
export function colourEdges(quantities: readonly (readonly number[])[], cards: number): readonly (readonly number[])[] {
  const papers = quantities[0]?.length ?? 0;
  const free = -1;
  const paperAt = quantities.map(() => new Array<number>(cards).fill(free));
  const roleAt = Array.from({ length: papers }, () => new Array<number>(cards).fill(free));
  quantities.forEach((row, role) => {
    const total = row.reduce((sum, quantity) => sum + quantity, 0);
    if (total !== cards) throw new RangeError(`role ${role} has ${total} blanks; allowed: ${cards}, one for each card`);
  });
  for (let paper = 0; paper < papers; paper += 1) {
    const load = quantities.reduce((sum, row) => sum + (row[paper] ?? 0), 0);
    if (load > cards) throw new RangeError(`paper ${paper} is used ${load} times; allowed: at most ${cards}`);
  }
  quantities.forEach((row, role) => {
    row.forEach((quantity, paper) => {
      for (let copy = 0; copy < quantity; copy += 1) colourOne(role, paper);
    });
  });
  return paperAt;

  function colourOne(role: number, paper: number): void {
    const papersOfRole = paperAt[role] ?? [];
    const rolesOfPaper = roleAt[paper] ?? [];
    const common = papersOfRole.findIndex((at, card) => at === free && rolesOfPaper[card] === free);
    const card = common >= 0 ? common : papersOfRole.indexOf(free);
    if (common < 0) exchange(paper, card, rolesOfPaper.indexOf(free));
    papersOfRole[card] = paper;
    rolesOfPaper[card] = role;
  }

  /** Exchanges two cards along the alternating path from `paper`, which uses `first` and not `second`. */
  function exchange(paper: number, first: number, second: number): void {
    const path: { readonly role: number; readonly paper: number; readonly card: number }[] = [];
    let at = paper;
    let card = first;
    for (;;) {
      const role: number = roleAt[at]?.[card] ?? free;
      if (role === free) break;
      path.push({ role, paper: at, card });
      card = first + second - card;
      const next: number = paperAt[role]?.[card] ?? free;
      if (next === free) break;
      path.push({ role, paper: next, card });
      at = next;
      card = first + second - card;
    }
    for (const edge of path) {
      place(edge.role, edge.card, free);
      occupy(edge.paper, edge.card, free);
    }
    for (const edge of path) {
      place(edge.role, first + second - edge.card, edge.paper);
      occupy(edge.paper, first + second - edge.card, edge.role);
    }
  }

  function place(role: number, card: number, paper: number): void {
    const row = paperAt[role];
    if (row) row[card] = paper;
  }

  function occupy(paper: number, card: number, role: number): void {
    const row = roleAt[paper];
    if (row) row[card] = role;
  }
}
