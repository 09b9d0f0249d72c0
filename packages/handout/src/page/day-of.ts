/** The day that it is by the clock of this machine, as YYYY-MM-DD. */
export function dayOf(now: Date): string {
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
