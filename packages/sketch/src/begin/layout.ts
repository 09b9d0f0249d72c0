import type { Piece } from '../model/sketch.js';
import type { LayoutPiece } from './layout-piece.js';
import type { Room } from './layout-room.js';
import type { StartingPaper } from './starting-papers.js';

/** A starting layout: its words, its papers, and its pieces for whatever room there is. */
export interface Layout {
  readonly id: string;
  readonly name: string;
  /** One sentence that says what it is. */
  readonly about: string;
  readonly base: StartingPaper;
  readonly papers: readonly StartingPaper[];
  /** Papers that take turns in the pieces cut from `prints`. */
  readonly mix?: readonly StartingPaper[];
  /** Pieces that never share a paper on one card. */
  readonly contrast?: readonly string[];
  readonly supplies: readonly string[];
  /** In gluing order. */
  readonly pieces: (room: Room) => readonly LayoutPiece[];
}

type Art = NonNullable<Piece['art']>;

/** Stamped words. */
export function words(text: string, ink: string): Art {
  return { motif: 'words', words: text, ink };
}

/** A stamped picture. */
export function motif(name: Exclude<Art['motif'], 'words'>, ink: string): Art {
  return { motif: name, words: '', ink };
}
