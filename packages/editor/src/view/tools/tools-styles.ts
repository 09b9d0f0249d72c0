import { css } from 'lit';

/** The tray of hand tools: rounders in a narrow column, punches in a wide one. */
export const toolsStyles = css`
  .columns {
    display: grid;
    grid-template-columns: 268px minmax(0, 1fr);
    gap: 18px 40px;
    align-items: start;
  }
  section {
    min-width: 0;
  }
  h3 {
    margin: 0 0 4px;
    font: 500 17px / 1.25 var(--heading-font);
  }
  h4 {
    margin: 16px 0 6px;
    color: var(--muted);
    font: italic 14.5px / 1.3 var(--heading-font);
  }
  .rounders {
    display: grid;
    grid-template-columns: repeat(3, 1fr);
    gap: 10px;
    margin: 12px 0 10px;
  }
  .rounder {
    display: grid;
    align-content: end;
    justify-items: end;
    min-height: 62px;
    padding: 6px 8px 5px;
    border: 1px dashed var(--line);
    color: var(--muted);
    font-size: 13.5px;
  }
  /* That it is there is said by aria-pressed already. */
  .rounder::after {
    content: '';
    min-height: 16px;
    font: italic 12px / 1.3 var(--heading-font);
  }
  .rounder[aria-pressed='true']::after {
    content: 'yours';
    color: var(--muted);
  }
  .rounder[aria-pressed='true'] {
    border: 1px solid transparent;
    background: var(--slip);
    box-shadow: 0 1px 0 rgb(20 25 24 / 0.14), 0 4px 10px rgb(20 25 24 / 0.14);
    color: var(--ink);
  }
  .another {
    display: flex;
    align-items: baseline;
    gap: 8px;
  }
  .another trimwell-length {
    width: 92px;
  }
  .caution {
    margin-top: 18px;
    padding-top: 8px;
    border-top: 1px solid var(--line);
    color: var(--muted);
    font-size: 12.5px;
    line-height: 1.4;
  }
  .punches {
    display: grid;
    gap: 10px;
    margin: 8px 0 6px;
    padding: 0;
    list-style: none;
  }
  .punch {
    display: grid;
    grid-template-columns: auto minmax(0, 1fr) auto;
    gap: 4px 16px;
    align-items: center;
    padding: 8px 10px 8px 14px;
    background: var(--slip);
    box-shadow: 0 1px 0 rgb(20 25 24 / 0.12), 0 4px 10px rgb(20 25 24 / 0.1);
  }
  .about {
    display: grid;
    font-variant-numeric: diagonal-fractions;
  }
  .about b {
    font: 600 15.5px / 1.3 var(--heading-font);
  }
  .about span {
    font-size: 12.5px;
  }
  .acts {
    display: flex;
    flex-wrap: wrap;
    justify-content: flex-end;
    gap: 0 2px;
  }
  .asked {
    grid-column: 1 / -1;
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 2px 8px;
    padding-top: 6px;
    border-top: 1px solid var(--line);
  }
  .measure {
    margin: 2px 0 0 -6px;
  }
  .more {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(118px, 1fr));
    gap: 4px 6px;
  }
  .more button {
    display: grid;
    justify-items: start;
    align-content: start;
    padding: 4px 6px 6px;
    border: 1px solid transparent;
    border-radius: 2px;
    font-size: 13px;
    line-height: 1.25;
    text-align: left;
  }
  .more button:hover {
    border-color: var(--line);
    background: var(--slip);
    text-decoration: none;
  }
  .more .quiet {
    font-size: 12px;
    font-variant-numeric: diagonal-fractions;
  }
  @media (max-width: 760px) {
    .columns {
      grid-template-columns: minmax(0, 1fr);
    }
    .punch {
      grid-template-columns: auto minmax(0, 1fr);
      padding: 8px 10px;
    }
    .punch .picture {
      width: 96px;
    }
    .punch .acts {
      grid-column: 1 / -1;
      justify-content: flex-start;
      margin-left: -6px;
    }
    .more {
      grid-template-columns: repeat(auto-fill, minmax(106px, 1fr));
    }
  }
`;
