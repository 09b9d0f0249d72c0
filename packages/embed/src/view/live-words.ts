/** The words beside the card in full. */
export const LIVE_WORDS = {
  sizesIn: 'Sizes in',
  makeYours: 'Make it yours',
  close: 'Close',
  drawnPlainly: 'This sketch is so large that its pieces are drawn without their edges.',
  styles: [
    ['in fraction', 'inches, 1⁄4'],
    ['in decimal', 'inches, 0.25'],
    ['mm fraction', 'millimetres'],
  ],
} as const;
