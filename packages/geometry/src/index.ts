export * from './cut/index.js';
export * from './length/index.js';
export * from './outline/index.js';
export * from './plan/index.js';
export * from './rect/rect.js';
export * from './sheet/index.js';
export * from './stack/index.js';
export * from './steps/index.js';
