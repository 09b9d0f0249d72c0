import { css } from 'lit';

const byLamplight = css`
  color-scheme: dark;
  --table: var(--trimwell-table, var(--lamp-table));
  --shelf: var(--trimwell-shelf, var(--lamp-shelf));
  --ink: var(--trimwell-ink, var(--lamp-ink));
  --muted: var(--trimwell-muted, var(--lamp-muted));
  --slip: var(--trimwell-slip, var(--lamp-slip));
  --line: var(--trimwell-line, var(--lamp-line));
  --accent: var(--trimwell-accent, var(--lamp-accent));
  --good: var(--trimwell-good, var(--lamp-good));
  --rule: var(--trimwell-rule, var(--lamp-rule));
  --rule-ink: var(--trimwell-rule-ink, var(--lamp-rule-ink));
`;

/**
 * The colours of the table by daylight and by lamplight. Each is read through its public `--trimwell-…` property, so
 * that a page sets what it wants and leaves the rest; `theme` on the element decides, else the visitor's system does.
 */
export const themeStyles = css`
  :host {
    --day-table: #ebe6dc;
    --day-shelf: #dfd7c8;
    --day-ink: #22302f;
    --day-muted: #4f5853;
    --day-slip: #fffdf7;
    --day-line: #cfc6b4;
    --day-accent: #97371c;
    --day-good: #2c5f4e;
    --day-rule: #f4e6b8;
    --day-rule-ink: #574512;
    --lamp-table: #23292a;
    --lamp-shelf: #1b2021;
    --lamp-ink: #ece7db;
    --lamp-muted: #a9b0a8;
    --lamp-slip: #2f3737;
    --lamp-line: #465051;
    --lamp-accent: #f0a17f;
    --lamp-good: #8fcbb2;
    --lamp-rule: #4a4327;
    --lamp-rule-ink: #f1e2ad;
    /* The words on the table are English; on a page that runs the other way they and their figures still run theirs. */
    direction: ltr;
    color-scheme: light;
    --table: var(--trimwell-table, var(--day-table));
    --shelf: var(--trimwell-shelf, var(--day-shelf));
    --ink: var(--trimwell-ink, var(--day-ink));
    --muted: var(--trimwell-muted, var(--day-muted));
    --slip: var(--trimwell-slip, var(--day-slip));
    --line: var(--trimwell-line, var(--day-line));
    --accent: var(--trimwell-accent, var(--day-accent));
    --good: var(--trimwell-good, var(--day-good));
    --rule: var(--trimwell-rule, var(--day-rule));
    --rule-ink: var(--trimwell-rule-ink, var(--day-rule-ink));
    --focus: var(--trimwell-focus, var(--ink));
    --font: var(--trimwell-font, 'Avenir Next', 'Segoe UI', 'Helvetica Neue', 'DejaVu Sans', Arial, sans-serif);
    --heading-font: var(--trimwell-heading-font, 'Iowan Old Style', 'Palatino Linotype', Palatino, 'DejaVu Serif', Georgia, serif);
  }
  :host([theme='dark']) {
    ${byLamplight}
  }
  @media (prefers-color-scheme: dark) {
    :host(:not([theme='light'])) {
      ${byLamplight}
    }
  }
  /* The visitor's own colours go before the table's; paper keeps its look, since that is what is being chosen. */
  @media (forced-colors: active) {
    :host,
    :host([theme='dark']) {
      --table: Canvas;
      --shelf: Canvas;
      --ink: CanvasText;
      --muted: CanvasText;
      --slip: Canvas;
      --line: CanvasText;
      --accent: LinkText;
      --good: CanvasText;
      --rule: Canvas;
      --rule-ink: CanvasText;
      --focus: Highlight;
    }
  }
`;
