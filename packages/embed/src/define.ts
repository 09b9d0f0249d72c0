import { TrimwellSketch } from './view/sketch-element.js';

// A page may load this twice: the first one stays.
if (!customElements.get('trimwell-sketch')) customElements.define('trimwell-sketch', TrimwellSketch);

export type { TrimwellSketch } from './view/sketch-element.js';
