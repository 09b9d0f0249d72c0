import { fileStem } from '@trimwell/handout';
import { type Sketch, writeSketchText } from '@trimwell/sketch';
import { saveFile } from '../../session/save-file.js';

/** Hands the sketch to the browser as a file to open again. */
export function saveSketchFile(sketch: Sketch): void {
  saveFile({ name: `${fileStem(sketch.title)}.json`, type: 'application/json', content: writeSketchText(sketch) });
}
