/** Reads a file as text, or standard input for `-`. */
export type ReadText = (file: string) => Promise<string>;

/** Writes a file beside what the command prints. */
export type WriteText = (file: string, text: string) => Promise<void>;

/** Writes a file that is no text. */
export type WriteBytes = (file: string, bytes: Uint8Array) => Promise<void>;
