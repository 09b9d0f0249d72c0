import { css } from 'lit';

/** Cards stand on boards: every row of the grid is as high as a board, which runs behind it from side to side. */
export const boardsStyles = css`
  :host {
    --stand: 172px;
    --board: 9px;
    --tab: 66px;
    --row: calc(var(--stand) + var(--board) + var(--tab));
    display: block;
  }
  ul {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(min(148px, 44%), 1fr));
    grid-auto-rows: var(--row);
    margin: 0;
    padding: 0 8px;
    list-style: none;
    background: repeating-linear-gradient(
      to bottom,
      transparent 0 var(--stand),
      var(--rule) var(--stand) calc(var(--stand) + 2px),
      color-mix(in srgb, var(--rule-ink) 38%, var(--rule)) calc(var(--stand) + 2px) calc(var(--stand) + var(--board)),
      transparent calc(var(--stand) + var(--board)) var(--row)
    );
  }
  li {
    display: grid;
    grid-template: var(--stand) var(--board) minmax(0, 1fr) / minmax(0, 1fr);
    justify-items: center;
    min-width: 0;
    padding: 0 6px;
    cursor: pointer;
  }
  li:focus-visible {
    outline-offset: -3px;
  }
  .card {
    position: relative;
    align-self: end;
    background: var(--slip);
    box-shadow: 5px 1px 5px -2px rgb(20 25 24 / 0.4);
    transition: translate 120ms;
  }
  .card.folded {
    transform: perspective(640px) rotateY(-17deg);
    transform-origin: left bottom;
  }
  .card.tent {
    transform: perspective(640px) rotateX(7deg);
    transform-origin: center bottom;
  }
  trimwell-drawing {
    width: 100%;
    height: 100%;
    pointer-events: none;
  }
  li[aria-selected='true'] .card {
    translate: 0 -9px;
    box-shadow: 6px 9px 8px -3px rgb(20 25 24 / 0.45);
  }
  .broken {
    display: grid;
    place-items: center;
    width: 92px;
    height: 118px;
    padding: 8px;
    border: 1px dashed var(--muted);
    color: #4f5853;
    background: #fffdf7;
    font-size: 12px;
    text-align: center;
  }
  .tab {
    align-self: start;
    max-width: 100%;
    margin-top: -5px;
    padding: 3px 9px 4px;
    background: var(--slip);
    box-shadow: 0 1px 3px rgb(20 25 24 / 0.3);
    font-size: 12px;
    line-height: 1.32;
    text-align: center;
  }
  .tab > * {
    display: block;
    overflow: hidden;
    text-overflow: ellipsis;
    white-space: nowrap;
  }
  .tab b {
    font: 500 14px / 1.3 var(--heading-font);
  }
  li[aria-selected='true'] .tab {
    outline: 2px solid var(--accent);
  }
  @media (prefers-reduced-motion: reduce) {
    .card {
      transition: none;
    }
  }
`;
