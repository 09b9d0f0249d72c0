export { cardFigure } from './card-figure.js';
export {
  checkLink,
  FILES_ALLOWED,
  filesFolder,
  type LiveOptions,
  SnippetError,
  type SnippetLink,
  type StaticOptions,
} from './snippet-options.js';
export { elementSnippet, frameSnippet, staticSnippet } from './snippets.js';
