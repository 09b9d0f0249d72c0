/** Copies `text`; what became of it, in words: `copied`, `unable` where the page may not, or what the browser says. */
export async function copyText(text: string, copied: string, unable: string): Promise<string> {
  // Absent in pages that were not loaded securely.
  const clipboard: Clipboard | undefined = navigator.clipboard;
  if (!clipboard) return unable;
  try {
    await clipboard.writeText(text);
    return copied;
  } catch (error) {
    return `The browser did not copy it: ${error instanceof Error ? error.message : String(error)}`;
  }
}
