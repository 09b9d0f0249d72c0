import { defineAll } from '../define-all.js';
import { VariationSlipElement } from './variation-slip.js';

defineAll({
  'trimwell-variation-slip': VariationSlipElement,
});
