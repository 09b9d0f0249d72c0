import { css } from 'lit';

/** The slips at the left, each with its row of words at the right, on one height. */
export const stackStyles = css`
  header {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0 8px;
  }
  h2 {
    margin: 0;
  }
  .build {
    margin-inline-start: auto;
    font-size: 12.5px;
  }
  .thick {
    /* Two lines, before anything is known as well: nothing below moves when it comes. */
    min-height: 2.7em;
    margin: 2px 0 4px;
    font-size: 12.5px;
    line-height: 1.35;
  }
  .order {
    display: flex;
    flex-wrap: wrap;
    gap: 0 4px;
    margin: 0 0 2px -6px;
    font-size: 12.5px;
  }
  .body {
    position: relative;
    /* A layer of its own: what changes elsewhere, as at every move of a drag, does not compose this one anew. */
    will-change: opacity;
  }
  .picture {
    position: absolute;
    inset: 0 auto 0 0;
    width: 128px;
    height: 100%;
    cursor: grab;
  }
  .dragging,
  .dragging * {
    cursor: grabbing !important;
    user-select: none;
    -webkit-user-select: none;
  }
  .picture g[data-piece] {
    transition: transform 140ms ease-out;
  }
  .picture g.lifted {
    transition: none;
  }
  .picture g.lifted > [data-role='shadow'] {
    fill-opacity: 0.3;
    transform: translate(30px, 90px);
  }
  .picture g > [data-role='shadow'] {
    pointer-events: none;
  }
  .picture g > [data-role='paper'] {
    stroke: rgb(29 36 35 / 0.45);
    stroke-width: 0.75;
  }
  .picture g > [data-role='foam'] {
    fill: #fffdf7;
    stroke: #4d554f;
    stroke-width: 0.75;
  }
  .picture g.lit > [data-role='outline'],
  .picture g.chosen > [data-role='outline'] {
    stroke: var(--accent);
    stroke-width: 1.5;
  }
  .picture g.hidden > [data-role='outline'] {
    stroke-dasharray: 4 3;
  }
  .picture g.hidden > :not([data-role='shadow']) {
    fill-opacity: 0.35;
  }
  [role='row'] {
    position: absolute;
    left: 132px;
    right: 0;
    height: 26px;
    display: flex;
    align-items: center;
    translate: 0 -50%;
    transition: top 140ms ease-out;
  }
  [role='row'].lifted {
    z-index: 1;
    transition: none;
    background: var(--slip);
    border-radius: 3px;
    box-shadow: 0 2px 8px rgb(29 36 35 / 0.25);
  }
  .name {
    flex: 1;
    min-width: 0;
  }
  .pick,
  .base {
    display: flex;
    align-items: center;
    width: 100%;
    min-height: 26px;
    padding: 0 2px 0 0;
    font-size: 13px;
    line-height: 1.3;
    text-align: left;
    overflow: hidden;
  }
  .pick b,
  .base b {
    flex: none;
    width: 24px;
    font-weight: 600;
    text-align: center;
  }
  .pick b {
    padding: 3px 0;
    cursor: grab;
    touch-action: none;
  }
  .pick .says {
    display: -webkit-box;
    min-width: 0;
    overflow: hidden;
    line-height: 1.12;
    -webkit-box-orient: vertical;
    -webkit-line-clamp: 2;
  }
  .pick:hover {
    text-decoration: none;
  }
  [role='row']:hover .says {
    text-decoration: underline;
    text-underline-offset: 3px;
  }
  .foam {
    display: block;
    margin-top: -1px;
    font-size: 11.5px;
    font-weight: 400;
    line-height: 1.1;
    color: var(--muted);
  }
  .lit .pick,
  .chosen .pick {
    color: var(--accent);
  }
  .chosen .pick {
    font-weight: 600;
  }
  .hidden .says {
    color: var(--muted);
    font-style: italic;
  }
  .mark {
    flex: none;
    width: 24px;
    min-height: 24px;
    padding: 4px;
    color: var(--muted);
    opacity: 0;
  }
  .mark[aria-pressed='true'] {
    color: var(--ink);
  }
  [role='row']:hover .mark,
  .chosen .mark,
  .mark:focus-visible,
  [role='row']:focus-within .mark,
  .mark[aria-pressed='true'] {
    opacity: 1;
  }
  .mark svg {
    display: block;
    width: 16px;
    height: 16px;
    overflow: visible;
    fill: none;
    stroke: currentcolor;
    stroke-width: 1.4;
  }
  .mark .full {
    fill: currentcolor;
  }
  .mark .dashed {
    stroke-dasharray: 2.5 2;
  }
  .refused {
    font-size: 12.5px;
  }
  @media (prefers-reduced-motion: reduce) {
    [role='row'],
    .picture g[data-piece] {
      transition: none;
    }
  }
`;
