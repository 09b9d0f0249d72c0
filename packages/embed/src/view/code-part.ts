/** What unfolds a share code; loaded when there is one. */
export { readShareCode } from '@trimwell/sketch/share-code';
