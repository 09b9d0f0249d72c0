import { AboutCardElement } from './about-card.js';
import { CardFormElement } from './card-form.js';
import { ClosingLinesElement } from './closing-lines.js';
import { SuppliesElement } from './supplies.js';

const TAGS: Readonly<Record<string, CustomElementConstructor>> = {
  'trimwell-card-form': CardFormElement,
  'trimwell-closing-lines': ClosingLinesElement,
  'trimwell-supplies': SuppliesElement,
  'trimwell-about-card': AboutCardElement,
};

for (const [tag, element] of Object.entries(TAGS)) if (!customElements.get(tag)) customElements.define(tag, element);
