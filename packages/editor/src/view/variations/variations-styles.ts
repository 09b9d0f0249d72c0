import { css } from 'lit';

/** The list of variations: a line each, with a notch into which its slip is put. */
export const variationsStyles = css`
  :host {
    /* What is told unseen scrolls with the column, and makes no page longer. */
    position: relative;
  }
  ol,
  ul {
    margin: 0;
    padding: 0;
    list-style: none;
  }
  li {
    padding-bottom: 2px;
  }
  .line {
    display: flex;
    align-items: start;
  }
  .wear {
    flex: none;
    width: 26px;
    min-height: 26px;
    margin-left: -4px;
    padding: 3px 4px;
    text-align: left;
  }
  /* A slip of paper with a notch in its far edge; it is taken out of its outline when it is put on. */
  .notch {
    position: relative;
    display: block;
    width: 15px;
    height: 15px;
    background: var(--muted);
    clip-path: polygon(0 0, 28% 0, 50% 30%, 72% 0, 100% 0, 100% 100%, 0 100%);
  }
  .notch::before {
    content: '';
    position: absolute;
    inset: 1.2px;
    background: var(--table);
    clip-path: polygon(0 0, 24% 0, 50% 38%, 76% 0, 100% 0, 100% 100%, 0 100%);
  }
  .notch::after {
    content: '';
    position: absolute;
    left: 3px;
    top: 5px;
    width: 8px;
    height: 4px;
    border: solid var(--table);
    border-width: 0 0 2px 2px;
    rotate: -45deg;
    opacity: 0;
  }
  [aria-checked='true'] .notch {
    background: var(--good);
  }
  [aria-checked='true'] .notch::before {
    opacity: 0;
  }
  [aria-checked='true'] .notch::after {
    opacity: 1;
  }
  [aria-disabled='true'] {
    cursor: default;
  }
  .open {
    flex: 1;
    min-width: 0;
    min-height: 26px;
    padding: 3px 0;
    text-align: left;
    text-decoration: underline;
    text-decoration-color: var(--line);
    text-underline-offset: 4px;
    overflow-wrap: anywhere;
  }
  .on .open {
    font-weight: 600;
  }
  .says {
    padding-left: 22px;
    font-size: 12px;
    line-height: 1.3;
  }
  .order {
    margin: 2px 0 4px;
    font-size: 12px;
    line-height: 1.35;
  }
  .start {
    padding: 0;
  }
  summary {
    min-height: 26px;
    padding: 3px 0;
    cursor: pointer;
    color: var(--muted);
    font-size: 12.5px;
  }
  .ready li {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto;
    align-items: baseline;
    gap: 0 6px;
  }
  .ready .says {
    padding-left: 0;
    grid-column: 1 / -1;
    padding-bottom: 4px;
  }
`;
