/** How long a test waits for what loads or is worked out beside it: long, since a machine with other work is slow. */
export const PATIENCE = { timeout: 20_000 };
