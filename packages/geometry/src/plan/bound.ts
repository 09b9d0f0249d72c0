/** The least that any plan needs, in sheets (or money), and the argument that shows it. */
export interface Bound {
  readonly value: number;
  readonly by: string;
}
