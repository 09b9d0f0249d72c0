import { StepsDoneElement } from './steps-done.js';

if (!customElements.get('trimwell-steps-done')) customElements.define('trimwell-steps-done', StepsDoneElement);
