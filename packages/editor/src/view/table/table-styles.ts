import { css } from 'lit';

/** What all parts of the table share: type, quiet buttons, fields, and the ring around what has the focus. */
export const tableStyles = css`
  :host {
    display: block;
    box-sizing: border-box;
    color: var(--ink);
    font: 13.5px / 1.4 var(--font);
    font-variant-numeric: diagonal-fractions;
  }
  *,
  *::before,
  *::after {
    box-sizing: border-box;
  }
  h2 {
    margin: 0 0 6px;
    font: 500 16px / 1.2 var(--heading-font);
  }
  p {
    margin: 0;
  }
  .quiet {
    color: var(--muted);
  }
  button {
    min-height: 28px;
    padding: 2px 6px;
    border: 0;
    border-radius: 4px;
    background: none;
    color: inherit;
    font: inherit;
    cursor: pointer;
  }
  button:hover:not(:disabled, [aria-disabled='true']) {
    text-decoration: underline;
    text-underline-offset: 3px;
  }
  button:is(:disabled, [aria-disabled='true']) {
    color: var(--muted);
    opacity: 0.65;
    cursor: default;
  }
  :is(button, input, select, textarea, summary, [tabindex]) {
    scroll-margin-bottom: var(--under, 0);
  }
  .act {
    color: var(--accent);
    font-weight: 600;
  }
  select,
  input {
    min-height: 26px;
    border: 0;
    border-bottom: 1px solid var(--line);
    border-radius: 0;
    background: transparent;
    color: inherit;
    font: inherit;
  }
  option {
    background: var(--slip);
    color: var(--ink);
  }
  :focus-visible {
    outline: 2px solid var(--focus);
    outline-offset: 2px;
    border-radius: 3px;
  }
  .unseen {
    position: absolute;
    width: 1px;
    height: 1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
`;
