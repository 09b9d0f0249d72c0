import { css } from 'lit';

/** What the parts of the tray of the card share: headings, rows of words and fields, lists to be ordered. */
export const aboutCardStyles = css`
  h3 {
    margin: 0 0 6px;
    font: 500 16px / 1.2 var(--heading-font);
  }
  .row {
    display: grid;
    grid-template-columns: 84px minmax(0, 1fr);
    gap: 2px 12px;
    align-items: baseline;
    margin: 0 0 6px;
  }
  .row > :first-child {
    color: var(--muted);
    font-size: 12.5px;
  }
  .fields {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 4px 10px;
    min-width: 0;
  }
  fieldset {
    min-width: 0;
    margin: 0;
    padding: 0;
    border: 0;
  }
  input:not([type='radio']),
  textarea {
    width: 100%;
    min-width: 0;
  }
  textarea {
    display: block;
    min-height: 104px;
    padding: 8px 10px;
    border: 1px solid var(--line);
    border-radius: 0;
    background: var(--slip);
    color: inherit;
    font: inherit;
    resize: vertical;
  }
  [aria-invalid='true'] {
    border-bottom: 2px solid var(--accent);
  }
  .problem {
    display: block;
    padding-top: 3px;
    color: var(--accent);
    font-size: 12.5px;
  }
  select {
    max-width: 100%;
    min-width: 0;
  }
  trimwell-length {
    width: 92px;
  }
  label.pick {
    display: inline-flex;
    align-items: center;
    gap: 6px;
    min-height: 28px;
    cursor: pointer;
  }
  label.pick:has(:disabled) {
    color: var(--muted);
    cursor: default;
  }
  label.pick input {
    width: 15px;
    height: 15px;
    min-height: 0;
    margin: 0;
    accent-color: var(--accent);
  }
  ol {
    margin: 0;
    padding: 0;
    list-style: none;
  }
  li {
    padding: 3px 0;
    border-bottom: 1px solid var(--line);
  }
  li input:not(:hover, :focus, [aria-invalid='true']) {
    border-bottom-color: transparent;
  }
  .acts {
    display: flex;
    flex: none;
    gap: 0;
  }
  .acts button {
    min-width: 28px;
  }
`;
