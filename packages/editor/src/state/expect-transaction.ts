import { expect } from 'vitest';
import { redo, undo } from './history.js';
import type { Command, EditorState, Transaction } from './state.js';
import { applyTransaction } from './transaction.js';

/** For tests only: the transaction that `command` dispatches; it must answer the same with and without `dispatch`. */
export function transactionOf(state: EditorState, command: Command): Transaction | null {
  const made: Transaction[] = [];
  const applies = command(state);
  expect(command(state, (transaction) => made.push(transaction), 7)).toBe(applies);
  expect(made).toHaveLength(applies ? 1 : 0);
  return made[0] ?? null;
}

/**
 * For tests only: the laws of every command, and the state after it. It applies, its transaction is data that does the
 * same after a trip through JSON, undo gives the very sketch from before, and redo the very sketch from after.
 */
export function expectTransaction(
  before: EditorState,
  command: Command,
  want?: (after: EditorState) => void,
): EditorState {
  const text = JSON.stringify(before);
  const transaction = transactionOf(before, command);
  if (!transaction) throw new Error('The command does not apply.');
  expect(transaction.at).toBe(7);
  const after = applyTransaction(before, transaction);
  want?.(after);
  expect(applyTransaction(before, JSON.parse(JSON.stringify(transaction)))).toEqual(after);
  if (transaction.edits.length > 0) {
    expect(after.sketch).not.toEqual(before.sketch);
    expect(undo(after).sketch).toBe(before.sketch);
    expect(undo(after).selection).toBe(before.selection);
    expect(redo(undo(after)).sketch).toBe(after.sketch);
  } else {
    expect(after.sketch).toBe(before.sketch);
    expect(after.history).toBe(before.history);
  }
  expect(JSON.stringify(before)).toBe(text);
  return after;
}

/** For tests only: the command does not apply and dispatches nothing. */
export function expectRefused(state: EditorState, command: Command): void {
  expect(transactionOf(state, command)).toBeNull();
}
