import { css } from 'lit';

/** The tray of new cards: sizes on the left, layouts on the right, what was chosen along the near edge. */
export const newCardStyles = css`
  .parts {
    display: grid;
    grid-template-columns: 470px minmax(0, 1fr);
    gap: 10px 28px;
    align-items: start;
  }
  fieldset {
    min-width: 0;
    margin: 0;
    padding: 0;
    border: 0;
  }
  legend {
    float: left;
    width: 100%;
    margin: 0 0 6px;
    padding: 0;
    font: 500 16px / 30px var(--heading-font);
  }
  legend + * {
    clear: both;
  }
  label {
    position: relative;
    cursor: pointer;
  }
  label:has(:focus-visible) {
    outline: 2px solid var(--focus);
    outline-offset: 2px;
    border-radius: 3px;
  }
  label:has(:disabled) {
    opacity: 0.6;
    cursor: default;
  }
  .line {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0 16px;
    min-height: 30px;
  }
  .line legend {
    width: 58px;
    margin: 0;
    color: var(--muted);
    font: 13.5px / 30px var(--font);
  }
  .line label {
    display: inline-flex;
    align-items: center;
    gap: 6px;
    min-height: 28px;
  }
  .line input {
    width: 15px;
    height: 15px;
    min-height: 0;
    margin: 0;
    accent-color: var(--accent);
  }
  .sizes {
    display: grid;
    grid-template-columns: repeat(5, minmax(0, 1fr));
    gap: 4px;
    margin: 0 0 8px;
  }
  .size,
  .layout {
    display: grid;
    justify-items: center;
    padding: 7px 3px 6px;
    border: 1px solid transparent;
    border-radius: 3px;
    text-align: center;
    font-size: 12.5px;
    line-height: 1.3;
  }
  .size:hover,
  .layout:hover {
    border-color: var(--line);
  }
  .size:has(:checked),
  .layout:has(:checked) {
    border-color: var(--accent);
    background: var(--slip);
    box-shadow: inset 0 -3px 0 var(--accent);
  }
  .size {
    grid-template-rows: minmax(0, 1fr) auto;
    align-items: end;
  }
  .size svg {
    overflow: visible;
    margin-bottom: 5px;
  }
  .size rect {
    fill: var(--slip);
    stroke: var(--muted);
    stroke-width: 1;
  }
  .size .leaf {
    fill: var(--line);
    stroke: none;
  }
  .size:has(:checked) .front {
    stroke: var(--accent);
    stroke-width: 1.5;
  }
  .size > span {
    white-space: nowrap;
  }
  .size b {
    display: block;
    font-size: 11.5px;
    font-weight: 600;
  }
  .own {
    display: flex;
    align-items: baseline;
    gap: 6px;
    margin: 0 0 8px;
  }
  .own trimwell-length {
    width: 96px;
  }
  .layouts {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(118px, 1fr));
    gap: 8px;
  }
  .picture {
    display: grid;
    place-items: center;
    width: 100%;
    height: 122px;
    margin-bottom: 6px;
  }
  footer {
    position: sticky;
    bottom: -22px;
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 4px 22px;
    margin: 14px -24px -22px;
    padding: 10px 24px 14px;
    border-top: 1px solid var(--line);
    background: var(--shelf);
  }
  footer p {
    flex: 1;
    min-width: 240px;
  }
  footer strong {
    font: 500 16px / 1.35 var(--heading-font);
  }
  .lay {
    min-height: 36px;
    padding: 4px 18px;
    border: 1px solid var(--accent);
    background: var(--slip);
    color: var(--accent);
    font-weight: 600;
  }
  @media (max-width: 900px) {
    .parts {
      grid-template-columns: minmax(0, 1fr);
    }
    .layouts {
      grid-template-columns: repeat(auto-fill, minmax(104px, 1fr));
    }
  }
  @media (max-width: 640px) {
    footer {
      margin: 14px -16px -22px;
      padding: 8px 16px 12px;
    }
    footer p {
      min-width: 200px;
    }
    .sizes {
      grid-template-columns: repeat(3, minmax(0, 1fr));
    }
    .about {
      display: none;
    }
  }
`;
