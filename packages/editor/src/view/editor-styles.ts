import { css } from 'lit';

/** Where the parts of the table lie: side by side at a desk, closer on a tablet, under each other on a phone. */
export const editorStyles = css`
  :host {
    position: relative;
    min-height: 640px;
    background: var(--table);
  }
  /* What comes later takes no room until it is there. */
  :is(trimwell-batch, trimwell-near-misses, trimwell-writing-band):not(:defined) {
    display: none;
  }
  /* Stands where the ticket will be, in its words, until the ticket can say it. */
  .prompt {
    margin: 10px 6px;
    color: var(--muted);
    font: italic 16px / 1.5 var(--heading-font);
  }
  .refused {
    padding: 40px 26px;
  }
  .table {
    display: grid;
    min-height: inherit;
    height: 100%;
    grid-template:
      'head head head head' auto
      'watch face ticket stack' minmax(var(--face-least, 320px), 1fr)
      'yield yield yield yield' auto
      'sheets sheets sheets sheets' auto
      'batch batch batch batch' auto
      / 192px minmax(0, 1fr) 266px 330px;
    gap: 6px 22px;
  }
  trimwell-headline {
    grid-area: head;
    /* What it opens lies over the rest of the table. */
    z-index: 5;
    padding: 8px 26px 0;
  }
  .aside {
    grid-area: watch;
    display: grid;
    align-content: start;
    gap: 14px;
    padding: 8px 0 6px 26px;
    overflow: auto;
  }
  trimwell-face {
    grid-area: face;
    min-height: 300px;
    --trimwell-ink: var(--ink);
    --trimwell-muted: var(--muted);
    --trimwell-accent: var(--accent);
    --trimwell-good: var(--good);
    --trimwell-line: var(--line);
    --trimwell-focus: var(--focus);
    --trimwell-table: var(--table);
    --trimwell-slip: var(--slip);
    --trimwell-font: var(--font);
    --trimwell-heading-font: var(--heading-font);
  }
  trimwell-turn-over {
    grid-area: face;
    z-index: 1;
    place-self: start;
    padding-top: 6px;
  }
  trimwell-writing-band {
    grid-area: face;
    z-index: 2;
    align-self: start;
  }
  /* The band lies above the card, not on it. */
  :host([writing]) trimwell-face {
    margin-top: 44px;
  }
  :host([writing]:not([narrow])) trimwell-turn-over {
    padding-top: 50px;
  }
  trimwell-ticket {
    grid-area: ticket;
    align-self: start;
    max-height: 100%;
    padding: 8px 4px 10px 2px;
  }
  trimwell-stack {
    grid-area: stack;
    padding: 8px 22px 0 0;
    overflow: auto;
  }
  trimwell-yield {
    grid-area: yield;
    padding: 0 26px;
  }
  .shelf {
    grid-area: sheets;
    min-width: 0;
    /* Over the gap to the batch, which is mostly put away. */
    margin-bottom: -6px;
    padding: 4px 22px 14px;
    background: var(--shelf);
    border-top: 1px solid var(--line);
    display: grid;
    grid-template-columns: minmax(0, 1fr) 236px;
    gap: 8px 24px;
  }
  trimwell-choices {
    padding-top: 6px;
  }
  trimwell-batch {
    grid-area: batch;
    padding: 4px 26px 20px;
    background: var(--table);
  }
  trimwell-batch[empty] {
    display: none;
  }
  :host([middling]) .table {
    grid-template:
      'head head head' auto
      'face ticket stack' minmax(var(--face-least, 320px), 1fr)
      'yield yield yield' auto
      'sheets sheets sheets' auto
      'batch batch batch' auto
      'watch watch watch' auto
      / minmax(0, 1fr) 244px 268px;
  }
  :host([middling]) .aside {
    overflow: visible;
    background: var(--table);
    padding-right: 26px;
    padding-bottom: 12px;
  }
  :host([narrow]) .table {
    height: auto;
    grid-template: 'head' auto 'turn' auto 'face' auto 'yield' auto 'misses' auto 'sheets' auto 'batch' auto 'stack' auto 'ways' auto 'watch' auto / minmax(0, 1fr);
  }
  :host([narrow]) :is(trimwell-headline, trimwell-yield, trimwell-stack, trimwell-watch, trimwell-variations, trimwell-batch, trimwell-near-misses) {
    padding-left: 16px;
    padding-right: 16px;
  }
  :host([narrow]) trimwell-turn-over {
    grid-area: turn;
    place-self: start center;
    padding: 0;
  }
  :host([narrow]) .shelf {
    grid-template-columns: minmax(0, 1fr);
    padding-left: 12px;
    padding-right: 0;
  }
  :host([narrow]) trimwell-choices {
    padding-left: 4px;
    padding-right: 16px;
  }
  :host([narrow]) .aside {
    display: contents;
  }
  :host([narrow]) trimwell-near-misses {
    grid-area: misses;
    padding-bottom: 6px;
  }
  :host([narrow]) trimwell-variations {
    grid-area: ways;
  }
  :host([narrow]) trimwell-writing-band {
    position: sticky;
    top: 0;
  }
  :host([narrow]) trimwell-watch {
    grid-area: watch;
    /* The last of it can be scrolled up from under the ticket. */
    padding-bottom: calc(90px + var(--under, 0px));
  }
  :host([narrow]) trimwell-ticket {
    position: fixed;
    z-index: 6;
    inset: auto 0 0;
    max-height: max(36vh, min(230px, 54vh));
    padding: 0;
    --under: 0px;
  }
  /* What gets the focus does not come to rest under the ticket. */
  :host([narrow][picked]) {
    --under: max(38vh, min(240px, 56vh));
  }
  :host([narrow]:not([picked])) trimwell-ticket {
    display: none;
  }
`;
