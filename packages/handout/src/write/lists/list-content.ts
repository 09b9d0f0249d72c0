/** One column of a table for people; figures stand to the right. */
export interface ListColumn {
  readonly title: string;
  readonly align: 'start' | 'end';
  /** Texts of this column may be broken into lines where a table has to be narrow. */
  readonly breaks?: boolean;
}

/** A table for people, with what is said above it. */
export interface ListTable {
  readonly heading: string | null;
  readonly lines: readonly string[];
  readonly columns: readonly ListColumn[];
  readonly rows: readonly (readonly string[])[];
}

/** A list before it is written: for people as tables, for spreadsheets as records, for programs as a document. */
export interface ListContent {
  readonly title: string;
  readonly lines: readonly string[];
  readonly tables: readonly ListTable[];
  /** The head first, then one record for each thing. */
  readonly records: readonly (readonly (string | number)[])[];
  readonly document: object;
}
