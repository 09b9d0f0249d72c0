/** What a sketch with hidden centres needs for its recipe; loaded when there is one. */
export { batchRecipe } from '@trimwell/sketch';
