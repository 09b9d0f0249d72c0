/** A count with its noun in English: `1 sheet`, `2 sheets`. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}
