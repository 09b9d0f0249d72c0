import type { TemplateResult } from 'lit';
import { keyed } from 'lit/directives/keyed.js';
import type { Session } from '../../session/session.js';
import { onPieces } from '../../state/on-selected.js';
import type { Command } from '../../state/state.js';

/**
 * A field for the pieces that are selected while it is shown: `run` changes those, even when others have been taken by the
 * time that what was typed is committed, and nothing once another sketch is on the table. Other pieces get another field, so
 * that nothing half typed is left in it.
 */
export function selectionField(session: Session, field: (run: (command: Command) => void) => TemplateResult): unknown {
  const { openings, state } = session;
  const { selection } = state;
  const run = (command: Command): void => {
    if (session.openings !== openings) return;
    const now = session.state;
    const meant = now.selection === selection ? command : onPieces(selection, command);
    meant(now, session.dispatch, Date.now());
  };
  return keyed(`${openings} ${selection.join(' ')}`, field(run));
}
