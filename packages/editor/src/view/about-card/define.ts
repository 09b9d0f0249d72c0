import { defineAll } from '../define-all.js';
import { LengthField } from '../table/length-field.js';
import { AboutCardElement } from './about-card.js';
import { CardFormElement } from './card-form.js';
import { ClosingLinesElement } from './closing-lines.js';
import { SuppliesElement } from './supplies.js';

defineAll({
  'trimwell-length': LengthField,
  'trimwell-card-form': CardFormElement,
  'trimwell-closing-lines': ClosingLinesElement,
  'trimwell-supplies': SuppliesElement,
  'trimwell-about-card': AboutCardElement,
});
