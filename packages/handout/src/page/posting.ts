import { cardFacts } from '@trimwell/sketch/assembly';
import type { HandoutContext } from './context.js';

/** A length in tenths of a millimetre, rounded up: what is posted is never thinner. */
export function millimetresUp(length: number): number {
  return Math.ceil(length / 64) / 10;
}

/** Where the handout is most likely read: by its language, and in English by its unit. */
function likelyCountry({ sketch, speech }: HandoutContext): string {
  if (speech.language === 'de') return 'DE';
  return sketch.unit === 'in' ? 'US' : 'GB';
}

/**
 * The envelope where the sketch names none, what one card weighs in it and how thick it is, and the letter that it goes as in the
 * country that was chosen, or else in the one in which the handout is most likely read.
 */
export function postingTexts(context: HandoutContext): readonly string[] {
  const { sketch, batch, speech } = context;
  const { say } = speech;
  const code = context.post ?? likelyCountry(context);
  const { envelopes, posted, post } = cardFacts(sketch, { batch, post: code });
  const { own, smallest } = envelopes;
  const [answer] = post;
  const country = speech.country(code);
  const lies = answer?.class
    ? [say.letter(country, answer.class.name, answer.surcharges.length > 0)]
    : [say.noLetter(country)];
  return [
    ...(own === null && smallest ? [say.envelope(batch.cards, smallest.name, speech.size(smallest))] : []),
    say.posted(speech.number(Math.ceil(posted.weight)), speech.number(millimetresUp(posted.thickness))),
    ...lies,
  ];
}
