import { defineAll } from '../define-all.js';
import { NearMissesElement } from './near-miss-slips.js';

defineAll({ 'trimwell-near-misses': NearMissesElement });
