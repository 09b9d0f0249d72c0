import { defineAll } from '../define-all.js';
import { LengthField } from '../table/length-field.js';
import { NewCardElement } from './new-card.js';

defineAll({
  'trimwell-length': LengthField,
  'trimwell-new-card': NewCardElement,
});
