import { copiedPieces, readPiecesText, writePiecesText } from '@trimwell/sketch';
import type { Session } from '../../session/session.js';
import { paste, remove, TOO_FULL } from '../../state/commands.js';
import { type Command, selectedPieces } from '../../state/state.js';
import { faceMessages } from './face-messages.js';

/** The face as its clipboard sees it. */
export interface ClipboardHost {
  readonly session: Session;
  run(command: Command): boolean;
  say(words: string): void;
  /** Shows, where it can be seen, why something was refused. */
  refuse(words: string): void;
  followSelection(): void;
}

/**
 * Copying, cutting and pasting through the events of the page, so that no permission is asked for. The clipboard holds
 * text: the pieces with all that they need as JSON, for another tab or any other program.
 */
export class FaceClipboard {
  constructor(private readonly host: ClipboardHost) {}

  /** Puts the selected pieces on the clipboard of `event`; false when none is selected. */
  copy(event: ClipboardEvent): boolean {
    const { state } = this.host.session;
    const copied = copiedPieces(state.sketch, state.selection);
    if (!copied || !event.clipboardData) {
      this.host.say(faceMessages.nothingToCopy);
      return false;
    }
    event.clipboardData.setData('text/plain', writePiecesText(copied));
    event.preventDefault();
    this.host.say(faceMessages.copied(selectedPieces(state)));
    return true;
  }

  /** Copies, and takes away what is not locked. */
  cut(event: ClipboardEvent): void {
    if (this.copy(event)) this.host.run(remove);
  }

  /** Glues the pieces of the clipboard on this face, or says why not. */
  paste(event: ClipboardEvent): void {
    const text = event.clipboardData?.getData('text/plain') ?? '';
    event.preventDefault();
    const reading = readPiecesText(text);
    if (!reading.ok) {
      const [first, ...others] = reading.problems;
      const more = others.length === 0 ? '' : ` And ${others.length} more.`;
      const known = first?.code === 'not-pieces' ? 'What was copied is no pieces of a card.' : '';
      this.host.refuse(`Nothing was pasted. ${known || `${first?.message ?? ''}${more}`}`);
      return;
    }
    this.host.followSelection();
    if (!this.host.run(paste(reading.copied))) this.host.refuse(`Nothing was pasted. ${TOO_FULL}`);
  }
}
