import { TrimwellEditor } from './view/editor.js';
import { EdgeMarksElement } from './view/face/edge-marks.js';
import { FaceElement } from './view/face/face.js';
import { WatchMarksElement } from './view/face/watch-marks.js';
import { KeptNoteElement } from './view/kept-note.js';
import { StackElement } from './view/stack/stack-panel.js';
import { BatchElement } from './view/table/batch-panel.js';
import { ChoicesElement } from './view/table/choices-panel.js';
import { DrawingElement } from './view/table/drawing-element.js';
import { HandOnElement } from './view/table/hand-on.js';
import { HeadlineElement } from './view/table/headline.js';
import { LengthField } from './view/table/length-field.js';
import { NearMissesElement } from './view/table/near-miss-slips.js';
import { SheetsElement } from './view/table/sheets-panel.js';
import { StepsSlipElement } from './view/table/steps-slip.js';
import { TurnOverElement } from './view/table/turn-over.js';
import { YieldNoteElement } from './view/table/yield-note.js';
import { YieldElement } from './view/table/yield-ruler.js';
import { TicketElement } from './view/ticket/ticket.js';
import { CornersElement } from './view/tools/corners.js';
import { EdgesElement } from './view/tools/edges.js';
import { TrayElement } from './view/trays/tray.js';
import { TrayHostElement } from './view/trays/tray-host.js';
import { ContrastElement } from './view/variations/contrast.js';
import { VariationsElement } from './view/variations/variations-panel.js';
import { WritingBandElement } from './view/variations/writing-band.js';
import { WatchElement } from './view/watch/watch-panel.js';

const TAGS: Readonly<Record<string, CustomElementConstructor>> = {
  'trimwell-drawing': DrawingElement,
  'trimwell-length': LengthField,
  'trimwell-face': FaceElement,
  'trimwell-edge-marks': EdgeMarksElement,
  'trimwell-watch-marks': WatchMarksElement,
  'trimwell-corners': CornersElement,
  'trimwell-edges': EdgesElement,
  'trimwell-headline': HeadlineElement,
  'trimwell-kept-note': KeptNoteElement,
  'trimwell-hand-on': HandOnElement,
  'trimwell-contrast': ContrastElement,
  'trimwell-ticket': TicketElement,
  'trimwell-yield-note': YieldNoteElement,
  'trimwell-yield': YieldElement,
  'trimwell-choices': ChoicesElement,
  'trimwell-batch': BatchElement,
  'trimwell-near-misses': NearMissesElement,
  'trimwell-sheets': SheetsElement,
  'trimwell-stack': StackElement,
  'trimwell-steps-slip': StepsSlipElement,
  'trimwell-turn-over': TurnOverElement,
  'trimwell-variations': VariationsElement,
  'trimwell-watch': WatchElement,
  'trimwell-writing-band': WritingBandElement,
  'trimwell-tray': TrayElement,
  'trimwell-tray-host': TrayHostElement,
  'trimwell-editor': TrimwellEditor,
};

// A page may load this twice, through two bundles: the first one stays.
for (const [tag, element] of Object.entries(TAGS)) if (!customElements.get(tag)) customElements.define(tag, element);

export type { TrimwellEditor } from './view/editor.js';
