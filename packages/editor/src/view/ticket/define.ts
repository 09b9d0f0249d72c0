import { defineAll } from '../define-all.js';
import { EdgeMarksElement } from '../face/edge-marks.js';
import { LengthField } from '../table/length-field.js';
import { CornersElement } from '../tools/corners.js';
import { EdgesElement } from '../tools/edges.js';
import { ContrastElement } from '../variations/contrast.js';
import { TicketElement } from './ticket.js';

defineAll({
  'trimwell-length': LengthField,
  'trimwell-corners': CornersElement,
  'trimwell-edges': EdgesElement,
  'trimwell-edge-marks': EdgeMarksElement,
  'trimwell-contrast': ContrastElement,
  'trimwell-ticket': TicketElement,
});
