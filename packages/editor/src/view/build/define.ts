import { defineAll } from '../define-all.js';
import { DrawingElement } from '../table/drawing-element.js';
import { BuildElement } from './build-tray.js';
import { CardFactsElement } from './card-facts.js';
import { CardSectionElement } from './section-view.js';
import { StepDrawingElement } from './step-drawing.js';

defineAll({
  'trimwell-drawing': DrawingElement,
  'trimwell-step-drawing': StepDrawingElement,
  'trimwell-card-section': CardSectionElement,
  'trimwell-card-facts': CardFactsElement,
  'trimwell-build': BuildElement,
});
