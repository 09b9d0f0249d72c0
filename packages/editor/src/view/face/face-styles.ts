import { css } from 'lit';

/**
 * Lines of the overlay are in pixels of the stage; those of the drawing keep their width at any zoom.
 * Paper looks the same by day and by night, so what is drawn over it has colours of its own; what stands beside the card
 * takes the table's.
 */
export const faceStyles = css`
  :host {
    display: block;
    position: relative;
    min-height: 240px;
    font-family: var(--trimwell-font, system-ui, sans-serif);
    color: var(--trimwell-ink, #22302f);
  }
  .table {
    position: absolute;
    inset: 0;
    /* A layer of its own, so that a move on the card composes nothing else anew. */
    will-change: opacity;
  }
  svg {
    display: block;
    width: 100%;
    height: 100%;
    overflow: hidden;
    user-select: none;
    -webkit-user-select: none;
    touch-action: pan-y;
  }
  [role='option'] {
    cursor: grab;
  }
  /* The overlay draws the focus around the piece itself; without pieces it is drawn around the card. */
  svg :focus,
  svg:focus {
    outline: none;
  }
  .dragging,
  .dragging * {
    cursor: grabbing;
  }
  /* Where the pointer is among the pieces is of no concern while it drags one. */
  .dragging .drawing {
    pointer-events: none;
  }
  [data-role] {
    vector-effect: non-scaling-stroke;
  }
  /* No weight of its own, so that every role's rule wins; what comes with a fill keeps it. */
  :where([data-role]:not([fill], text)) {
    fill: none;
  }
  path[data-role='shadow'] {
    fill: var(--trimwell-shadow, #1d2423);
    fill-opacity: 0.2;
    stroke: none;
  }
  .cover {
    fill: transparent;
    stroke: none;
    pointer-events: none;
  }
  [data-role='outline'] {
    stroke: var(--trimwell-edge, rgb(29 36 35 / 0.28));
    stroke-width: 1;
  }
  path[data-role='hidden'] {
    fill: var(--trimwell-casing, #fffdf6);
    stroke: rgb(29 36 35 / 0.3);
    stroke-width: 0.75;
  }
  [data-role='art'] {
    stroke-width: 1.5;
  }
  text[data-role='art'] {
    stroke: none;
    font-family: var(--trimwell-heading-font, Georgia, serif);
    font-style: italic;
  }
  [data-role='fold'] {
    stroke: var(--trimwell-muted, #5c6561);
    stroke-width: 1.25;
    stroke-dasharray: 10 4;
  }
  [data-role='dimension'] {
    stroke: var(--trimwell-muted, #5c6561);
    stroke-width: 1;
  }
  [data-role='figure'] {
    fill: var(--trimwell-muted, #5c6561);
    font-variant-numeric: diagonal-fractions;
  }
  .overlay {
    fill: none;
    pointer-events: none;
  }
  .overlay path {
    stroke-width: 1.5;
    stroke: var(--trimwell-mark, #a33b1e);
  }
  .overlay .casing {
    stroke: var(--trimwell-casing, #fffdf6);
    stroke-width: 4;
    stroke-opacity: 0.75;
  }
  .overlay .pointed {
    stroke-width: 2;
    stroke-dasharray: 2 4;
    stroke-linecap: round;
  }
  .overlay .selected {
    stroke-width: 1.75;
  }
  .overlay .selected.away {
    stroke-dasharray: 3 5;
  }
  .overlay .pin {
    fill: var(--trimwell-mark, #a33b1e);
    stroke: var(--trimwell-casing, #fffdf6);
    stroke-width: 2;
  }
  .overlay .drawn-frame {
    fill: var(--trimwell-mark, #a33b1e);
    fill-opacity: 0.07;
    stroke: var(--trimwell-mark, #a33b1e);
    stroke-width: 1.25;
    stroke-dasharray: 6 3;
  }
  .overlay .focused {
    stroke: var(--trimwell-focus, #1d5fa8);
    stroke-width: 2.5;
  }
  .overlay .centre {
    stroke-dasharray: 14 4 2 4;
    stroke-width: 1.25;
  }
  .overlay .chain {
    stroke-width: 1;
    stroke: var(--trimwell-muted, #5c6561);
  }
  .overlay .chain.own {
    stroke: var(--trimwell-accent, #a33b1e);
    stroke-width: 1.5;
  }
  .overlay .handle {
    pointer-events: all;
  }
  .overlay .handle .target {
    fill: transparent;
    stroke: none;
  }
  .overlay .handle .grip {
    fill: var(--trimwell-mark, #a33b1e);
    stroke: var(--trimwell-casing, #fffdf6);
    stroke-width: 1.5;
    stroke-linejoin: round;
  }
  .overlay .handle:hover .grip {
    fill: #22302f;
  }
  .overlay .arc {
    stroke-width: 1.5;
    stroke-linecap: round;
  }
  .overlay .arc.casing {
    stroke-width: 5;
    stroke-opacity: 0.9;
  }
  .overlay .round {
    cursor: grab;
  }
  .overlay .bite {
    stroke-width: 2;
    stroke-linecap: round;
  }
  .overlay .bite.casing {
    stroke-width: 5;
    stroke-opacity: 0.9;
  }
  .overlay .round:hover .bite:not(.casing) {
    stroke: #22302f;
  }
  .overlay .tilt {
    cursor: grab;
  }
  .overlay text {
    font-size: 13px;
    font-variant-numeric: diagonal-fractions;
    fill: var(--trimwell-mark, #a33b1e);
    paint-order: stroke;
    stroke: var(--trimwell-casing, #fffdf6);
    stroke-width: 4px;
    stroke-linejoin: round;
    font-weight: 600;
  }
  .overlay .beside {
    fill: var(--trimwell-accent, #a33b1e);
    stroke: var(--trimwell-table, #ebe6dd);
  }
  .overlay .figure:not(.own) {
    font-weight: 400;
  }
  .overlay .slip {
    fill: var(--trimwell-slip, #fffdf6);
    stroke: var(--trimwell-line, #b9b2a2);
    stroke-width: 1;
  }
  .overlay .slip-figure {
    fill: var(--trimwell-ink, #22302f);
    stroke: none;
  }
  .refused {
    position: absolute;
    left: 50%;
    bottom: 8px;
    width: max-content;
    max-width: calc(100% - 24px);
    margin: 0;
    padding: 7px 12px;
    translate: -50% 0;
    background: var(--trimwell-slip, #fffdf6);
    color: var(--trimwell-ink, #22302f);
    border-left: 3px solid var(--trimwell-accent, #a33b1e);
    box-shadow: 0 2px 10px rgb(20 25 24 / 0.3);
    font-size: 13px;
    line-height: 1.4;
  }
  .unseen {
    position: absolute;
    width: 1px;
    height: 1px;
    margin: -1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
`;
