import * as z from 'zod/mini';
import { TrimwellSketch } from './view/sketch-element.js';

// Strict pages report every try to make code of text, even one that is only to find out.
z.config({ jitless: true });

// A page may load this twice: the first one stays.
if (!customElements.get('trimwell-sketch')) customElements.define('trimwell-sketch', TrimwellSketch);
