import type { Sketch } from '@trimwell/sketch';
import { asKeepError } from '../keeping/keep-error.js';
import { shareLink } from '../keeping/share-link.js';

/** A link that carries the sketch, and what became of copying it. */
export interface CopiedLink {
  readonly link: string;
  readonly says: string;
}

/** Makes a link to this page that carries `sketch`, and copies it if the browser lets it. */
export async function copyLink(sketch: Sketch): Promise<CopiedLink> {
  const link = await shareLink(sketch, location.href);
  // Absent in pages that were not loaded securely; the link can be copied by hand then.
  const clipboard: Clipboard | undefined = navigator.clipboard;
  try {
    await clipboard?.writeText(link);
    return { link, says: clipboard ? 'The link is copied.' : 'The link is shown below, to copy it.' };
  } catch (error) {
    return { link, says: `The browser did not copy it (${asKeepError(error).message}); it is shown below.` };
  }
}
