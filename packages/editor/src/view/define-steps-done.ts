import { defineAll } from './define-all.js';
import { StepsDoneElement } from './steps-done.js';

defineAll({ 'trimwell-steps-done': StepsDoneElement });
