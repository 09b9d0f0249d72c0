export * from './format-length.js';
export * from './length.js';
export { LengthError, type LengthReading, parseLength, readLength } from './parse-length.js';
export * from './read-sum.js';
