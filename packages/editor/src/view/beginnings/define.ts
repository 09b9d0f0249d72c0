import { NewCardElement } from './new-card.js';

if (!customElements.get('trimwell-new-card')) customElements.define('trimwell-new-card', NewCardElement);
