import { css } from 'lit';

/** The field itself, and the two slips that may hang under it: what a sum comes to, and what is wrong. */
export const lengthFieldStyles = css`
  :host {
    display: inline-block;
    position: relative;
  }
  input {
    width: 100%;
    min-width: 0;
    font-variant-numeric: tabular-nums diagonal-fractions;
  }
  input:disabled {
    border-bottom-style: dotted;
    color: var(--muted);
    opacity: 1;
  }
  input[aria-invalid='true'] {
    border-bottom: 2px solid var(--accent);
  }
  .worked,
  .error {
    position: absolute;
    z-index: 3;
    top: calc(100% + 2px);
    width: max-content;
    max-width: 210px;
    background: var(--slip);
    font-size: 12px;
  }
  .worked {
    left: 0;
    padding: 1px 5px;
    color: var(--muted);
    box-shadow: 0 2px 6px rgb(20 25 24 / 0.16);
    pointer-events: none;
    white-space: nowrap;
  }
  .worked:empty {
    padding: 0;
    box-shadow: none;
  }
  .error {
    right: 0;
    padding: 6px 8px;
    border: 1px solid var(--accent);
    color: var(--accent);
  }
`;
