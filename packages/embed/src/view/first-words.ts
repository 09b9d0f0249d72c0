/** The words of the first look; those of what is loaded later stand in `live-words.ts` and `desk/desk-words.ts`. */
export const WORDS = {
  piece: 'Piece',
  howMany: 'How many',
  cut: 'Cut',
  from: 'From',
  sizes: 'Sizes for one card',
  loading: 'One moment …',
  notRead: 'The live sketch could not be read.',
  notLoaded: 'A part of the live sketch could not be loaded.',
} as const;
