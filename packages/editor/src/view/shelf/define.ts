import { BoardsElement } from './boards.js';
import { ShelfElement } from './shelf.js';
import { StorageElement } from './storage-panel.js';

const TAGS: Readonly<Record<string, CustomElementConstructor>> = {
  'trimwell-boards': BoardsElement,
  'trimwell-storage': StorageElement,
  'trimwell-shelf': ShelfElement,
};

for (const [tag, element] of Object.entries(TAGS)) if (!customElements.get(tag)) customElements.define(tag, element);
