import { css } from 'lit';

/** How the cards of a batch lie: in rows, each with its number, those of a drag from before a little paler. */
export const batchStyles = css`
  :host {
    container-type: inline-size;
  }
  header {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 2px 14px;
  }
  h2 {
    margin: 0;
  }
  .differ {
    font-weight: 600;
  }
  .words {
    display: flex;
    flex-wrap: wrap;
    gap: 2px 18px;
    margin-bottom: 10px;
    font-size: 12.5px;
  }
  .reason {
    flex-basis: 100%;
  }
  .templates {
    position: absolute;
    width: 0;
    height: 0;
  }
  ol {
    display: flex;
    flex-wrap: wrap;
    gap: 10px 18px;
    margin: 0;
    padding: 0;
    list-style: none;
    transition: opacity 160ms;
  }
  ol.stale {
    opacity: 0.6;
  }
  li div {
    display: flex;
    gap: 3px;
  }
  li svg {
    width: var(--card);
    height: auto;
  }
  @container (max-width: 480px) {
    li svg {
      width: calc(var(--card) * 0.9);
    }
  }
  li p {
    margin-top: 2px;
    font-size: 12px;
    line-height: 1.3;
    text-align: center;
    font-variant-numeric: tabular-nums;
  }
  .clash {
    color: var(--accent);
  }
  use {
    cursor: pointer;
  }
  use.lit {
    --edge: var(--accent);
    --edge-width: 2.5px;
  }
  [data-role='outline'] {
    stroke: var(--edge, rgb(29 36 35 / 0.35));
    stroke-width: var(--edge-width, 0.75px);
  }
  [data-role='art'] {
    stroke-width: 0.75px;
  }
  text[data-role='art'] {
    stroke: none;
    font-family: var(--heading-font);
  }
  [data-role='fold'] {
    stroke: var(--muted);
    stroke-dasharray: 5 3;
  }
  [data-role='shadow'] {
    pointer-events: none;
  }
  @media (prefers-reduced-motion: reduce) {
    ol {
      transition: none;
    }
  }
`;
