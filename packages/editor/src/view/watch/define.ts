import { defineAll } from '../define-all.js';
import { WatchMarksElement } from '../face/watch-marks.js';
import { WatchElement } from './watch-panel.js';

defineAll({ 'trimwell-watch': WatchElement, 'trimwell-watch-marks': WatchMarksElement });
