import { defineAll } from '../define-all.js';
import { BoardsElement } from './boards.js';
import { ShelfElement } from './shelf.js';
import { StorageElement } from './storage-panel.js';

defineAll({
  'trimwell-boards': BoardsElement,
  'trimwell-storage': StorageElement,
  'trimwell-shelf': ShelfElement,
});
