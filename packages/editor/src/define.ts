import { TrimwellEditor } from './view/editor.js';
import { FaceElement } from './view/face/face.js';
import { BatchElement } from './view/table/batch-panel.js';
import { ChoicesElement } from './view/table/choices-panel.js';
import { DrawingElement } from './view/table/drawing-element.js';
import { FilesElement } from './view/table/files-panel.js';
import { HeadlineElement } from './view/table/headline.js';
import { LengthField } from './view/table/length-field.js';
import { NearMissesElement } from './view/table/near-miss-slips.js';
import { SheetsElement } from './view/table/sheets-panel.js';
import { StackElement } from './view/table/stack-panel.js';
import { TurnOverElement } from './view/table/turn-over.js';
import { WatchElement } from './view/table/watch-panel.js';
import { YieldNoteElement } from './view/table/yield-note.js';
import { YieldElement } from './view/table/yield-ruler.js';
import { TicketElement } from './view/ticket/ticket.js';
import { TrayElement } from './view/trays/tray.js';
import { TrayHostElement } from './view/trays/tray-host.js';

const TAGS: Readonly<Record<string, CustomElementConstructor>> = {
  'trimwell-drawing': DrawingElement,
  'trimwell-length': LengthField,
  'trimwell-face': FaceElement,
  'trimwell-headline': HeadlineElement,
  'trimwell-files': FilesElement,
  'trimwell-ticket': TicketElement,
  'trimwell-yield-note': YieldNoteElement,
  'trimwell-yield': YieldElement,
  'trimwell-choices': ChoicesElement,
  'trimwell-batch': BatchElement,
  'trimwell-near-misses': NearMissesElement,
  'trimwell-sheets': SheetsElement,
  'trimwell-stack': StackElement,
  'trimwell-turn-over': TurnOverElement,
  'trimwell-watch': WatchElement,
  'trimwell-tray': TrayElement,
  'trimwell-tray-host': TrayHostElement,
  'trimwell-editor': TrimwellEditor,
};

// A page may load this twice, through two bundles: the first one stays.
for (const [tag, element] of Object.entries(TAGS)) if (!customElements.get(tag)) customElements.define(tag, element);

export type { TrimwellEditor } from './view/editor.js';
