export {
  CUT_FILE_FORMATS,
  CUT_FILE_GROUPS,
  CutFileError,
  type CutFileOptions,
  MOST_CUT_CARDS,
  WIDEST_GAP,
} from './cut-file-options.js';
export { type CutFile, type CutFiles, type CutPaperSheets, cutFiles } from './cut-files.js';
export { LINE_KINDS } from './cut-page.js';
export { zipCutFiles } from './zip-cut-files.js';
