export { TrimwellSketch } from './view/sketch-element.js';
