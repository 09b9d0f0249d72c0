/** What the tray of papers is about when a new paper is wished for; no paper has such an id. */
export const ANOTHER_PAPER = 'another paper';
