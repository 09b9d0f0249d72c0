/** Every command on pieces, by what it is about. Paper records, tools and variations have theirs beside these. */
export * from './arrange-commands.js';
export * from './copy-commands.js';
export * from './mat-commands.js';
export * from './new-piece-commands.js';
export * from './order-commands.js';
export * from './paper-commands.js';
export * from './paste-command.js';
export * from './piece-commands.js';
export * from './place-commands.js';
export * from './select-commands.js';
