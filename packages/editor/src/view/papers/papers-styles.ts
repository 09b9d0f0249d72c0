import { css } from 'lit';

/** What the parts of the tray of papers share: headings, rows of words and fields, slips. */
export const papersStyles = css`
  h3 {
    margin: 0 0 6px;
    font: 500 16px / 1.2 var(--heading-font);
  }
  .slip {
    padding: 14px 16px 12px;
    background: var(--slip);
    box-shadow: 0 1px 0 rgb(20 25 24 / 0.12), 0 4px 12px rgb(20 25 24 / 0.1);
  }
  dl {
    display: grid;
    grid-template-columns: 76px minmax(0, 1fr);
    gap: 3px 10px;
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
    align-items: baseline;
    gap: 2px 8px;
    margin: 0;
    min-width: 0;
  }
  dd.stays {
    flex-wrap: nowrap;
  }
  select {
    max-width: 100%;
  }
  trimwell-length {
    width: 84px;
  }
  input.number {
    width: 64px;
    font-variant-numeric: tabular-nums;
  }
  label.tick {
    display: inline-flex;
    align-items: baseline;
    gap: 7px;
    padding: 3px 0;
  }
  label.tick input {
    width: 16px;
    height: 16px;
    min-height: 0;
    margin: 0;
    translate: 0 2px;
    accent-color: var(--accent);
  }
  .problem {
    color: var(--accent);
    font-size: 12.5px;
  }
  .small {
    font-size: 12.5px;
    line-height: 1.4;
  }
  summary {
    min-height: 24px;
    cursor: pointer;
    color: var(--muted);
    font-size: 12.5px;
  }
  details[open] {
    width: 100%;
  }
  .four {
    display: grid;
    grid-template-columns: auto minmax(0, 1fr) auto minmax(0, 1fr);
    gap: 3px 8px;
    align-items: baseline;
    font-size: 12.5px;
  }
  .four trimwell-length {
    width: 100%;
  }
  .acts {
    display: flex;
    flex-wrap: wrap;
    gap: 2px 6px;
    margin: 8px -6px 0;
  }
  .firm {
    min-height: 30px;
    padding: 3px 12px;
    border: 1px solid var(--line);
    background: var(--slip);
  }
`;
