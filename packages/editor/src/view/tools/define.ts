import { EdgeSlipElement } from './edge-slip.js';
import { PunchFormElement } from './punch-form.js';
import { ToolsElement } from './tools.js';

const TAGS: Readonly<Record<string, CustomElementConstructor>> = {
  'trimwell-edge-slip': EdgeSlipElement,
  'trimwell-punch-form': PunchFormElement,
  'trimwell-tools': ToolsElement,
};

for (const [tag, element] of Object.entries(TAGS)) if (!customElements.get(tag)) customElements.define(tag, element);
