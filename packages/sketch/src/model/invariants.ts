import { type Problem, problemAt } from './problem.js';
import type { Sketch } from './sketch.js';

type Path = readonly PropertyKey[];

/** Ids that occur a second time among `records`. */
function repeatedIds(records: readonly { readonly id: string }[], path: Path, taken: Set<string>): Problem[] {
  return records.flatMap((record, index) => {
    if (taken.has(record.id))
      return [problemAt('repeated-id', [...path, index, 'id'], record.id, 'an id not yet used')];
    taken.add(record.id);
    return [];
  });
}

function missing(known: ReadonlySet<string>, id: string | undefined, path: Path, what: string): Problem[] {
  if (id === undefined || known.has(id)) return [];
  const choices = [...known].slice(0, 8).join(', ');
  return [
    problemAt(
      'missing-reference',
      path,
      id,
      known.size === 0 ? `the id of ${what}, but there is none` : `the id of ${what}: ${choices}`,
    ),
  ];
}

/** Pieces whose chain of mats comes back to themselves. */
function matCircles(sketch: Sketch): Problem[] {
  const matted = new Map(sketch.pieces.map((piece) => [piece.id, piece.mats?.piece]));
  return sketch.pieces.flatMap((piece, index) => {
    const seen = new Set<string>();
    for (let at: string | undefined = piece.id; at !== undefined; at = matted.get(at)) {
      if (seen.has(at)) {
        return [
          problemAt(
            'mat-circle',
            ['pieces', index, 'mats', 'piece'],
            piece.mats?.piece,
            'a piece that is not matted by this one',
          ),
        ];
      }
      seen.add(at);
    }
    return [];
  });
}

/**
 * What the schema cannot say: ids are unique, every reference has its target, no mat follows itself, and margins leave
 * something of their sheet. Empty for a sound sketch.
 */
export function findBroken(sketch: Sketch): Problem[] {
  const papers = new Set<string>();
  const mixes = new Set<string>();
  const repeated = [
    ...repeatedIds(sketch.papers, ['papers'], papers),
    ...repeatedIds(sketch.mixes, ['mixes'], mixes),
    ...repeatedIds(sketch.punches, ['punches'], new Set()),
    ...repeatedIds(sketch.pieces, ['pieces'], new Set(['card-base'])),
    ...repeatedIds(sketch.variations, ['variations'], new Set()),
  ];
  const clash = sketch.mixes.flatMap((mix, index) =>
    papers.has(mix.id) ? [problemAt('repeated-id', ['mixes', index, 'id'], mix.id, 'an id that no paper has')] : [],
  );
  const sources = new Set([...papers, ...mixes]);
  const punches = new Set(sketch.punches.map((punch) => punch.id));
  const pieces = new Set(sketch.pieces.map((piece) => piece.id));
  return [
    ...repeated,
    ...clash,
    ...missing(papers, sketch.card.base, ['card', 'base'], 'a paper'),
    ...sketch.papers.flatMap((paper, index) => {
      const { top, right, bottom, left } = paper.margins;
      const leaves = left + right < paper.width && top + bottom < paper.height;
      return leaves
        ? []
        : [
            problemAt(
              'margins-too-large',
              ['papers', index, 'margins'],
              paper.margins,
              'margins that leave something of the sheet',
            ),
          ];
    }),
    ...sketch.mixes.flatMap((mix, index) =>
      mix.papers.flatMap((paper, at) => missing(papers, paper, ['mixes', index, 'papers', at], 'a paper')),
    ),
    ...sketch.pieces.flatMap((piece, index) => [
      ...missing(sources, piece.from, ['pieces', index, 'from'], 'a paper or a mix'),
      ...missing(pieces, piece.mats?.piece, ['pieces', index, 'mats', 'piece'], 'a piece'),
      ...Object.entries(piece.punched).flatMap(([edge, punch]) =>
        missing(punches, punch, ['pieces', index, 'punched', edge], 'a punch'),
      ),
    ]),
    ...sketch.batch.contrast.flatMap((group, index) =>
      group.flatMap((piece, at) => missing(pieces, piece, ['batch', 'contrast', index, at], 'a piece')),
    ),
    ...matCircles(sketch),
  ];
}
