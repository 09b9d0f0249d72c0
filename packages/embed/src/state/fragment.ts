/** What stands before a reader's choices in a fragment. */
export const CHOICES = 'trimwell=';

/** The code of a reader's choices in a page's fragment, or null: `#trimwell=…`, also behind another part and `&`. */
export function choicesInFragment(fragment: string): string | null {
  const part = fragment
    .replace(/^#/, '')
    .split('&')
    .find((each) => each.startsWith(CHOICES));
  return part === undefined ? null : part.slice(CHOICES.length);
}
