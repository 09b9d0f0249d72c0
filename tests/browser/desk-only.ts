/** Marks a test whose outcome hangs neither on the width of the page nor on what points: the phone need not act it again. */
export const DESK = '@desk';
