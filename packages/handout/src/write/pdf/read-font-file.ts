/**
 * The bytes of a font: from the disk where the address is a file's (Node), else as any resource of the page. Node's own
 * modules are asked of the process, because an import of them would break the browser's bundle.
 * @throws Error when the font cannot be had.
 */
export async function readFontFile(address: URL): Promise<Uint8Array> {
  if (address.protocol === 'file:' && typeof process !== 'undefined')
    return process.getBuiltinModule('node:fs/promises').readFile(address);
  const response = await fetch(address);
  if (!response.ok) throw new Error(`The font ${address.pathname} cannot be loaded: ${response.status}.`);
  return new Uint8Array(await response.arrayBuffer());
}
