import { defineAll } from './view/define-all.js';
import { TrimwellEditor } from './view/editor.js';
import { FaceElement } from './view/face/face.js';
import { StackElement } from './view/stack/stack-panel.js';
import { ChoicesElement } from './view/table/choices-panel.js';
import { DrawingElement } from './view/table/drawing-element.js';
import { HandOnElement } from './view/table/hand-on.js';
import { HeadlineElement } from './view/table/headline.js';
import { SheetsElement } from './view/table/sheets-panel.js';
import { StepsSlipElement } from './view/table/steps-slip.js';
import { TurnOverElement } from './view/table/turn-over.js';
import { YieldNoteElement } from './view/table/yield-note.js';
import { YieldElement } from './view/table/yield-ruler.js';
import { TrayHostElement } from './view/trays/tray-host.js';

defineAll({
  'trimwell-drawing': DrawingElement,
  'trimwell-face': FaceElement,
  'trimwell-headline': HeadlineElement,
  'trimwell-hand-on': HandOnElement,
  'trimwell-yield-note': YieldNoteElement,
  'trimwell-yield': YieldElement,
  'trimwell-choices': ChoicesElement,
  'trimwell-sheets': SheetsElement,
  'trimwell-stack': StackElement,
  'trimwell-steps-slip': StepsSlipElement,
  'trimwell-turn-over': TurnOverElement,
  'trimwell-tray-host': TrayHostElement,
  'trimwell-editor': TrimwellEditor,
});

export type { TrimwellEditor } from './view/editor.js';
