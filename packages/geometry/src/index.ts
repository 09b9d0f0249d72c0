export * from './cut/index.js';
export * from './length/index.js';
export * from './outline/index.js';
export * from './rect/rect.js';
