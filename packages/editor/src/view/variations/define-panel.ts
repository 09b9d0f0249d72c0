import { defineAll } from '../define-all.js';
import { VariationsElement } from './variations-panel.js';
import { WritingBandElement } from './writing-band.js';

defineAll({ 'trimwell-variations': VariationsElement, 'trimwell-writing-band': WritingBandElement });
