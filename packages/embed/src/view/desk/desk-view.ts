import { type Child, part } from '../part.js';
import { cardsSection, variationsSection } from './cards-section.js';
import type { Shown } from './desk-state.js';
import { DESK_WORDS as WORDS } from './desk-words.js';
import { fold } from './fold.js';
import { designerSection, handOnSection, hasWords } from './hand-on-section.js';
import { paperSection } from './paper-section.js';
import { everySection, guideSection, resultLine, stepsSection } from './result-section.js';
import { scrapSection } from './scrap-section.js';

/** All of the desk, from its state. */
export function deskView(shown: Shown): readonly Child[] {
  const { state } = shown;
  return [
    part('div', { key: 'cards' }, cardsSection(shown)),
    state.offered.length === 0 ? null : fold(shown, 'variations', WORDS.variations, () => variationsSection(shown)),
    fold(shown, 'paper', WORDS.paper, () => [...paperSection(shown), ...scrapSection(shown)]),
    resultLine(shown),
    fold(shown, 'guide', WORDS.guide, () => guideSection(shown)),
    fold(shown, 'every', WORDS.every, () => everySection(shown)),
    fold(shown, 'steps', WORDS.steps, () => stepsSection(shown)),
    hasWords(shown) ? fold(shown, 'designer', WORDS.designer, () => designerSection(shown)) : null,
    fold(shown, 'handOn', WORDS.handOn, () => handOnSection(shown)),
    part('p', { key: 'said', class: 'quiet', role: 'status' }, state.said),
  ];
}
