import { css } from 'lit';

/** The picture of a step beside the list of steps, the section below them, and the figures at the end. */
export const buildStyles = css`
  .parts {
    display: grid;
    grid-template-columns: minmax(0, 5fr) minmax(0, 6fr);
    gap: 22px 36px;
    align-items: start;
  }
  h3 {
    margin: 0 0 6px;
    font: 500 16px / 1.2 var(--heading-font);
  }
  .picture {
    height: min(44vh, 360px);
    padding: 10px;
    background: var(--slip);
    box-shadow: 0 1px 3px rgb(20 25 24 / 0.25);
  }
  .picture trimwell-step-drawing {
    width: 100%;
    height: 100%;
  }
  .turns {
    display: flex;
    flex-wrap: wrap;
    gap: 4px 10px;
    align-items: center;
    padding: 8px 0 0;
  }
  .turns button {
    min-height: 30px;
    padding: 2px 10px;
    border: 1px solid var(--line);
  }
  .turns .count {
    margin-inline-start: auto;
    color: var(--muted);
  }
  .now {
    min-height: 4.2em;
    padding: 8px 0 0;
    font-size: 15px;
  }
  ol {
    margin: 0;
    padding: 0;
    list-style: none;
    max-height: min(56vh, 470px);
    overflow: auto;
  }
  ol button {
    display: grid;
    grid-template-columns: 2em minmax(0, 1fr) auto;
    gap: 0 8px;
    align-items: baseline;
    width: 100%;
    min-height: 28px;
    padding: 4px 8px;
    border-inline-start: 4px solid transparent;
    border-radius: 0;
    text-align: start;
  }
  ol button[aria-current='step'] {
    border-inline-start-color: var(--accent);
    background: var(--slip);
    font-weight: 600;
  }
  ol .high {
    color: var(--muted);
    font-weight: 400;
    white-space: nowrap;
  }
  .wide {
    grid-column: 1 / -1;
  }
  .line {
    display: flex;
    flex-wrap: wrap;
    gap: 6px 18px;
    align-items: center;
  }
  .line label {
    display: inline-flex;
    gap: 6px;
    align-items: center;
    min-height: 28px;
  }
  .line input[type='range'] {
    width: min(260px, 60vw);
    accent-color: var(--accent);
  }
  .line input[type='radio'] {
    min-height: 0;
    width: 15px;
    height: 15px;
    margin: 0;
    accent-color: var(--accent);
  }
  .small {
    font: 12.5px var(--font);
  }
  .cut {
    display: flex;
    flex-wrap: wrap;
    gap: 16px 32px;
    align-items: center;
  }
  .cut trimwell-step-drawing {
    flex: 0 0 150px;
    height: 180px;
  }
  .section svg {
    display: block;
    flex: 1 1 480px;
    min-width: 0;
    max-width: 760px;
    height: auto;
    max-height: 420px;
    fill: none;
  }
  .section .paper {
    stroke: #22302f;
    stroke-width: 0.7;
  }
  .section .foam {
    fill: #f2efe6;
    stroke: #22302f;
    stroke-width: 0.8;
    stroke-dasharray: 2 2;
  }
  .section .lit .paper {
    stroke: var(--accent);
    stroke-width: 2.4;
  }
  .section .lit text {
    font-weight: 700;
    text-decoration: underline;
  }
  .section .leader {
    stroke: var(--muted);
    stroke-width: 0.8;
  }
  .section .table,
  .section .dimension {
    stroke: var(--ink);
    stroke-width: 1;
  }
  .section text {
    fill: var(--ink);
    font: 11.5px var(--font);
  }
  .caution {
    padding-top: 8px;
    color: var(--muted);
    font-size: 12.5px;
  }
  @media (max-width: 760px) {
    .parts {
      grid-template-columns: minmax(0, 1fr);
    }
    ol {
      max-height: 40vh;
    }
    .section svg {
      flex-basis: 100%;
    }
  }
  @media (forced-colors: active) {
    ol button {
      border-inline-start-color: Canvas;
    }
    ol button[aria-current='step'] {
      border-inline-start-color: Highlight;
    }
    .section svg,
    .picture {
      forced-color-adjust: none;
      background: #fffdf7;
      --ink: #22302f;
      --muted: #545d58;
    }
  }
`;
