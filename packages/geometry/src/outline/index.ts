export * from './outline.js';
