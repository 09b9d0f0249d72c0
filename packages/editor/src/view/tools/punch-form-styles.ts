import { css } from 'lit';

/** The slip on which a punch is measured: words on one side, the drawing and its sizes on the other. */
export const punchFormStyles = css`
  form {
    display: grid;
    grid-template-columns: minmax(0, 1fr) minmax(0, 1.05fr);
    gap: 8px 28px;
    padding: 14px 18px 10px;
    background: var(--slip);
    box-shadow: 0 1px 0 rgb(20 25 24 / 0.12), 0 5px 14px rgb(20 25 24 / 0.14);
  }
  .name {
    display: grid;
    grid-template-columns: 52px minmax(0, 1fr);
    align-items: baseline;
    gap: 8px;
    color: var(--muted);
  }
  .name input {
    color: var(--ink);
    font: 500 17px / 1.2 var(--heading-font);
  }
  .problem {
    color: var(--accent);
    font-size: 12.5px;
  }
  fieldset {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(92px, 1fr));
    gap: 2px;
    margin: 8px 0 0;
    padding: 0;
    border: 0;
  }
  legend {
    padding: 0 0 2px;
    color: var(--muted);
  }
  .profile {
    position: relative;
    display: grid;
    justify-items: center;
    align-content: start;
    gap: 2px;
    padding: 2px 2px 4px;
    border: 1px solid transparent;
    border-radius: 2px;
    font-size: 12px;
    line-height: 1.2;
    text-align: center;
    cursor: pointer;
  }
  .profile:hover {
    border-color: var(--line);
  }
  .profile input {
    position: absolute;
    inset: 0;
    width: 100%;
    height: 100%;
    margin: 0;
    opacity: 0;
    cursor: pointer;
  }
  .profile:has(:checked) {
    border-color: var(--accent);
    color: var(--accent);
    font-weight: 600;
  }
  .profile:has(:focus-visible) {
    outline: 2px solid var(--focus);
    outline-offset: 2px;
  }
  .drawing {
    display: block;
    align-self: center;
    width: 100%;
    max-width: 420px;
    height: auto;
  }
  .drawing .paper {
    fill: #f4ecd8;
  }
  .drawing .edge {
    fill: none;
    stroke: var(--ink);
    stroke-width: 1.4;
    stroke-linejoin: round;
  }
  .drawing .eyelet {
    fill: var(--slip);
    stroke: var(--ink);
  }
  .drawing .gone {
    stroke: var(--muted);
    stroke-dasharray: 6 3;
  }
  .drawing .thin {
    stroke: var(--muted);
    stroke-width: 0.8;
  }
  .drawing .arrow {
    fill: var(--muted);
  }
  .drawing text {
    fill: var(--ink);
    font-size: 12px;
    font-variant-numeric: diagonal-fractions;
  }
  .sizes {
    grid-column: 1 / -1;
    display: grid;
    grid-template-columns: repeat(3, minmax(0, 1fr));
    gap: 8px 24px;
    padding-top: 8px;
    border-top: 1px solid var(--line);
  }
  .size {
    display: grid;
    grid-template-columns: auto minmax(0, 1fr);
    align-content: start;
    align-items: baseline;
    gap: 4px 10px;
  }
  .size p {
    grid-column: 1 / -1;
  }
  .size span {
    color: var(--muted);
  }
  .size p {
    color: var(--muted);
    font-size: 12.5px;
    line-height: 1.35;
  }
  .acts {
    grid-column: 1 / -1;
    display: flex;
    gap: 6px;
    margin: 4px -6px 0;
  }
  @media (max-width: 760px) {
    form {
      grid-template-columns: minmax(0, 1fr);
      padding: 12px 12px 8px;
    }
    .sizes {
      grid-template-columns: minmax(0, 1fr);
    }
    .size {
      grid-template-columns: 52px minmax(0, 1fr);
    }
  }
`;
