import type { PDFDocument } from '@cantoo/pdf-lib';

/** ISO 32000-2, 7.6.4.3.3, algorithm 2.A: what is longer is cut off, and then another password would open the file. */
const MOST_BYTES = 127;

/** Encrypts a document so that it opens with `password`, and then allows everything. @throws Error */
export function protect(document: PDFDocument, password: string): void {
  const bytes = new TextEncoder().encode(password).length;
  if (bytes === 0 || bytes > MOST_BYTES)
    throw new Error(`The password has ${bytes} bytes of UTF-8; allowed: 1 to ${MOST_BYTES}.`);
  document.encrypt({
    algorithm: 'AES-256',
    userPassword: password,
    ownerPassword: password,
    permissions: {
      printing: 'highResolution',
      modifying: true,
      copying: true,
      annotating: true,
      fillingForms: true,
      contentAccessibility: true,
      documentAssembly: true,
    },
  });
}
