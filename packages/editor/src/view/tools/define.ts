import { defineAll } from '../define-all.js';
import { LengthField } from '../table/length-field.js';
import { EdgeSlipElement } from './edge-slip.js';
import { PunchFormElement } from './punch-form.js';
import { ToolsElement } from './tools.js';

defineAll({
  'trimwell-length': LengthField,
  'trimwell-edge-slip': EdgeSlipElement,
  'trimwell-punch-form': PunchFormElement,
  'trimwell-tools': ToolsElement,
});
