import { css } from 'lit';

/** A paper slip with a punched hole, and the figures on it. */
export const ticketStyles = css`
  :host {
    display: flex;
    flex-direction: column;
  }
  .slip {
    position: relative;
    display: flex;
    flex-direction: column;
    min-height: 0;
    padding: 12px 12px 6px 14px;
    background: var(--slip);
    box-shadow: 0 1px 0 rgb(20 25 24 / 0.12), 0 5px 14px rgb(20 25 24 / 0.14);
  }
  .slip::before {
    content: '';
    position: absolute;
    right: 13px;
    top: 13px;
    width: 11px;
    height: 11px;
    border: 1px solid var(--line);
    border-radius: 50%;
    background: var(--table);
  }
  .empty {
    padding: 10px 4px;
    color: var(--muted);
    font: italic 15px / 1.5 var(--heading-font);
  }
  .top {
    flex: none;
    display: flex;
    align-items: baseline;
    gap: 8px;
    padding-right: 24px;
    margin-bottom: 6px;
  }
  .top b {
    font: 600 17px var(--heading-font);
  }
  .top input {
    flex: 1;
    min-width: 0;
    border-bottom-color: transparent;
    font: 500 17px / 1.2 var(--heading-font);
  }
  .top input:hover {
    border-bottom-color: var(--line);
  }
  dl {
    display: grid;
    grid-template-columns: 52px minmax(0, 1fr);
    gap: 1px 8px;
    margin: 0;
    align-items: baseline;
  }
  dt {
    color: var(--muted);
    font-size: 12.5px;
  }
  dd {
    display: flex;
    flex-wrap: wrap;
    gap: 2px 6px;
    align-items: baseline;
    margin: 0;
    min-width: 0;
  }
  dd.pair {
    flex-wrap: nowrap;
  }
  trimwell-length {
    width: 68px;
  }
  .pair trimwell-length {
    flex: 1 1 0;
    width: 0;
    min-width: 0;
  }
  input.number {
    width: 40px;
  }
  select {
    max-width: 100%;
  }
  details[open] {
    width: 100%;
  }
  summary {
    min-height: 24px;
    cursor: pointer;
    color: var(--muted);
    font-size: 12.5px;
  }
  .four {
    display: grid;
    grid-template-columns: auto minmax(0, 1fr);
    gap: 2px 8px;
    align-items: baseline;
    font-size: 12.5px;
  }
  .pair select {
    flex: 1 1 auto;
    width: 0;
    min-width: 0;
  }
  .figure {
    white-space: nowrap;
  }
  .words {
    display: flex;
    width: 100%;
    gap: 0 2px;
    margin-left: -6px;
  }
  .word {
    min-height: 24px;
    padding: 0 6px;
  }
  .link {
    min-height: 24px;
    padding: 0 2px;
    color: var(--accent);
    text-align: left;
  }
  .note {
    margin: 0 0 6px;
    color: var(--muted);
    font: italic 13px / 1.4 var(--heading-font);
  }
  .names {
    display: flex;
    flex-wrap: wrap;
    gap: 0 10px;
    margin: -4px 0 6px -2px;
    font-size: 12.5px;
  }
  .names .link {
    max-width: 100%;
    overflow: hidden;
    color: inherit;
    text-overflow: ellipsis;
    white-space: nowrap;
  }
  .acts {
    display: flex;
    flex-wrap: wrap;
    gap: 0 4px;
    margin: 6px -6px 0;
    padding-top: 4px;
    border-top: 1px solid var(--line);
  }
  /* The name stays above what scrolls, the way out below it. */
  .scroll {
    flex: 0 1 auto;
    min-height: 0;
    margin: 0 -12px 0 -14px;
    padding: 2px 12px 8px 14px;
    overflow: auto;
    scroll-padding: 6px 0 14px;
    scrollbar-width: thin;
  }
  .acts.last {
    position: relative;
    flex: none;
    margin: 0 -12px 0 -14px;
    padding: 3px 8px 0;
  }
  /* More of the slip goes on under the row. */
  .acts.last::before {
    content: '';
    position: absolute;
    inset: -13px 8px calc(100% + 1px) 0;
    pointer-events: none;
    background: linear-gradient(transparent, var(--slip));
  }
  button[aria-pressed='true'] {
    color: var(--accent);
    font-weight: 600;
    text-decoration: underline;
    text-underline-offset: 3px;
  }
`;
