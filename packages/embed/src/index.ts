export { type Choices, type ChoicesReading, readChoicesCode, writeChoicesCode } from './state/choices.js';
export { TrimwellSketch } from './view/sketch-element.js';
