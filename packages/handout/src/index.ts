export * from './drawing/drawing.js';
