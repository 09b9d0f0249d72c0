import { css } from 'lit';

/** What the parts about hand tools share: pictures of punches, and little corners of paper. */
export const toolStyles = css`
  .picture {
    display: block;
    flex: none;
  }
  .picture .paper {
    fill: #f4ecd8;
  }
  .picture .edge {
    fill: none;
    stroke: #3d4644;
    stroke-width: 1.1;
    stroke-linejoin: round;
  }
  .picture .eyelet {
    fill: var(--table);
    stroke: #3d4644;
    stroke-width: 1;
  }
  .corner {
    position: relative;
    min-width: 25px;
    min-height: 26px;
    padding: 3px 1px 0 4px;
    border: 1px solid transparent;
    border-top-color: var(--line);
    border-left-color: var(--line);
    border-radius: 0;
    font-size: 11.5px;
    font-variant-numeric: diagonal-fractions;
    line-height: 1.2;
  }
  .corner:hover:not(:disabled) {
    border-top-color: currentColor;
    border-left-color: currentColor;
    text-decoration: none;
  }
  .corner[aria-pressed='true'] {
    border-top: 2px solid var(--accent);
    border-left: 2px solid var(--accent);
    color: var(--accent);
    font-weight: 600;
  }
`;
