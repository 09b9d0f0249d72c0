/** What is not seen or changes how other letters are seen: controls, line and paragraph ends, direction marks, halves of pairs. */
const UNSEEN = /[\p{Cc}\p{Zl}\p{Zp}\p{Cs}\p{Bidi_Control}\ufeff]/gu;

/**
 * `text` in one line that shows what it holds: a control, a line end, or a mark that turns the direction of writing is
 * shown by its number, as in `[U+202E]`.
 */
export function shownText(text: string): string {
  return text.replace(UNSEEN, (letter) => {
    const code = letter.codePointAt(0) ?? 0;
    return `[U+${code.toString(16).toUpperCase().padStart(4, '0')}]`;
  });
}
