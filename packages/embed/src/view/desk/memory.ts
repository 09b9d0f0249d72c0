import { memoryKey } from '../../state/memory-key.js';
import { type Remembered, writeRemembered } from '../../state/remembered.js';

/** Keeps what the reader did with the sketch `id`, or nothing of it for null. False where the browser keeps nothing. */
export function keep(id: string, remembered: Remembered | null): boolean {
  try {
    if (remembered) localStorage.setItem(memoryKey(id), writeRemembered(remembered));
    else localStorage.removeItem(memoryKey(id));
    return true;
  } catch {
    // Full or forbidden storage is told of by the caller; the link holds the same choices.
    return false;
  }
}
