import { expectSketch, type Sketch } from '@trimwell/sketch';
import { sampleDocument } from './sample-document.js';

/**
 * Folded cards of ivory letter sheets, two bases from each, with one strip of moss card, 4 in wide and `height` high,
 * from sheets of 4 x 12 in, so that everything can be counted by hand. `sheets` limits papers by id.
 */
export function stripSketch(
  height: string,
  sheets: Readonly<Record<string, number>> = {},
  more: Partial<ReturnType<typeof sampleDocument>> = {},
): Sketch {
  const document = sampleDocument();
  const [ivory, moss] = document.papers;
  const strip = document.pieces.find(({ id }) => id === 'strip');
  if (!ivory || !moss || !strip) throw new Error('the sample has ivory and moss card and a strip');
  const limited = (paper: typeof ivory) => {
    const limit = sheets[paper.id];
    return limit === undefined ? paper : { ...paper, sheets: limit };
  };
  return expectSketch({
    ...document,
    papers: [limited(ivory), limited({ ...moss, width: 4 })],
    mixes: [],
    variations: [],
    batch: { cards: 12 },
    pieces: [{ ...strip, x: '1/8 in', y: '1 in', width: '4 in', height, from: 'moss', punched: {} }],
    ...more,
  });
}
