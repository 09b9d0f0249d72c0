import { VariationSlipElement } from './variation-slip.js';

if (!customElements.get('trimwell-variation-slip'))
  customElements.define('trimwell-variation-slip', VariationSlipElement);
