import { defineAll } from '../define-all.js';
import { TrayElement } from './tray.js';

defineAll({ 'trimwell-tray': TrayElement });
