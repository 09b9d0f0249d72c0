export { type FullestSheet, fullestSheet, type ValuedBlank } from './fullest-sheet.js';
export { isPriced } from './kinds.js';
