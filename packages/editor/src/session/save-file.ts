/** A file as it is handed out. */
export interface SavedFile {
  readonly name: string;
  /** Its media type. */
  readonly type: string;
  readonly content: BlobPart;
}

/** Hands a file to the browser as a download. */
export function saveFile({ name, type, content }: SavedFile): void {
  const address = URL.createObjectURL(new Blob([content], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser has begun to read by the next task; the address is not needed after that.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}
