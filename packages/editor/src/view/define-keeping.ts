import { defineAll } from './define-all.js';
import { KeptNoteElement } from './kept-note.js';

defineAll({ 'trimwell-kept-note': KeptNoteElement });

export { Keeper } from '../keeping/keeper.js';
