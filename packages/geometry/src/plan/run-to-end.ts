/** Runs all slices of some work and gives what it comes to. */
export function runToEnd<Result>(slices: Generator<unknown, Result>): Result {
  let slice = slices.next();
  while (!slice.done) slice = slices.next();
  return slice.value;
}
