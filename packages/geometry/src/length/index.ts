export * from './format-length.js';
export * from './length.js';
export * from './parse-length.js';
