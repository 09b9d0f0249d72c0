import type { MixPlan, Sketch } from '@trimwell/sketch';

/** `sketch` with every piece of a mix cut from the paper that card number `card` of `plan`, from 0, gets for it. */
export function dealtSketch(sketch: Sketch, plan: MixPlan, card: number): Sketch {
  const papers = new Map(plan.roles.map(({ piece }, role) => [piece, plan.deal[card]?.[role]]));
  return { ...sketch, pieces: sketch.pieces.map((piece) => ({ ...piece, from: papers.get(piece.id) ?? piece.from })) };
}
