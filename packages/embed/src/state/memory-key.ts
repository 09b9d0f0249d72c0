/** The one name under which a browser keeps what its reader did with the sketch `id`. */
export function memoryKey(id: string): string {
  return `trimwell-sketch:${id}`;
}
