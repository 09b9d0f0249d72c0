import type { Session } from '../../session/session.js';
import { seenPieces, toggleSelect } from '../../state/commands.js';
import type { Command } from '../../state/state.js';
import { bindingOf, type KeyBinding } from '../keymap.js';
import { faceMessages } from './face-messages.js';
import { HeldKey } from './held-key.js';

/** The face as its keys see it. */
export interface KeyHost {
  readonly session: Session;
  /** True while a pointer drags; keys wait then. */
  readonly dragging: boolean;
  /** Does what was asked for, or says why not. */
  ask(command: Command, gesture?: string): boolean;
  take(piece: string): void;
  say(words: string): void;
  focusPiece(piece: string): void;
  /** Puts the focus on the selected piece once it is shown. */
  followSelection(): void;
}

const WAYS: Readonly<Record<string, 1 | -1>> = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 };

/**
 * The keys of the face. With nothing selected the arrow keys go from piece to piece and Enter takes one; all else is in
 * the table of keys. Repeats of a key held down are one gesture, and one step of the history.
 */
export class FaceKeys {
  /** The last thing the user touched was the keyboard, so the focus is to be seen. */
  used = true;
  readonly #held = new HeldKey((gesture) => this.host.session.settle(gesture));

  constructor(private readonly host: KeyHost) {}

  down(event: KeyboardEvent, focused: string | null): void {
    this.used = true;
    if (this.host.dragging || event.defaultPrevented) return;
    const plain = !event.ctrlKey && !event.metaKey && !event.altKey && !event.shiftKey;
    const way = plain && this.host.session.state.selection.length === 0 ? WAYS[event.key] : undefined;
    const enter = event.key === 'Enter' || event.key === ' ';
    const binding = bindingOf(event);
    if (way !== undefined) this.#focusAlong(focused, way);
    else if (enter && plain && focused !== null) this.host.take(focused);
    else if (enter && event.shiftKey && focused !== null) this.host.ask(toggleSelect(focused));
    else if (binding) this.#press(binding, event);
    else return;
    event.preventDefault();
  }

  up(event: KeyboardEvent): void {
    // Tab goes down elsewhere: of the one that comes in, only the end is heard here.
    if (event.key === 'Tab') this.used = true;
    this.#held.release(event.code);
  }

  /** Settles what a held key does. */
  end(): void {
    this.#held.end();
  }

  #press({ command, held }: KeyBinding, { code, repeat }: KeyboardEvent): void {
    const { session } = this.host;
    if (held && command !== 'undo' && command !== 'redo') {
      // Asked first, so that a key that does not apply begins no gesture.
      if (command(session.state)) this.host.ask(command, this.#held.press(code, repeat));
      else if (!repeat) this.host.ask(command);
      return;
    }
    this.#held.end();
    if (command === 'undo' || command === 'redo') {
      session[command]();
      this.host.say(command === 'undo' ? faceMessages.undone : faceMessages.redone);
      return;
    }
    const before = session.state.selection;
    this.host.ask(command);
    if (session.state.selection.length > 0 && session.state.selection !== before) this.host.followSelection();
  }

  #focusAlong(from: string | null, by: 1 | -1): void {
    const ids = seenPieces(this.host.session.state).map(({ id }) => id);
    const start = from === null ? (by > 0 ? -1 : ids.length) : ids.indexOf(from);
    const next = ids[(start + by + ids.length) % Math.max(1, ids.length)];
    if (next !== undefined) this.host.focusPiece(next);
  }
}
