import { defineAll } from '../define-all.js';
import { BatchElement } from './batch-panel.js';

defineAll({ 'trimwell-batch': BatchElement });
