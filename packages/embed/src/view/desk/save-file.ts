import type { MadeFile } from '../../make/make-messages.js';

/** Hands a file to the browser as a download. */
export function saveFile({ name, type, content }: MadeFile): void {
  const address = URL.createObjectURL(new Blob([content], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser has begun to read long before that; the address is not needed after.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}
