import { css } from 'lit';

/** The slip of punches: paper, as wide as two pictures side by side. */
export const edgeSlipStyles = css`
  :host {
    display: contents;
  }
  dialog {
    position: fixed;
    grid-template-rows: auto minmax(0, 1fr) auto auto;
    width: min(316px, 100vw - 16px);
    max-height: min(460px, 100vh - 16px);
    margin: 0;
    padding: 12px 14px 8px;
    border: 1px solid var(--line);
    border-radius: 3px;
    background: var(--slip);
    color: var(--ink);
    font: 13.5px / 1.4 var(--font);
    box-shadow: 0 2px 3px rgb(20 25 24 / 0.14), 0 10px 34px rgb(20 25 24 / 0.28);
  }
  dialog[open] {
    display: grid;
  }
  /* The card stays in sight, since the edge changes there. */
  dialog::backdrop {
    background: rgb(24 28 27 / 0.08);
  }
  h3 {
    margin: 8px 0 2px;
    color: var(--muted);
    font: 12.5px / 1.3 var(--font);
  }
  .scroll {
    min-height: 0;
    margin: 0 -6px;
    padding: 2px 4px;
    overflow: auto;
    overscroll-behavior: contain;
  }
  .choices {
    display: grid;
    grid-template-columns: repeat(3, minmax(0, 1fr));
    gap: 4px;
  }
  .choice {
    display: grid;
    justify-items: center;
    gap: 2px;
    min-width: 0;
    padding: 0 3px 4px;
    border: 1px solid transparent;
    border-radius: 2px;
    font-size: 12px;
    line-height: 1.2;
    overflow: hidden;
  }
  .choice .picture {
    max-width: 100%;
  }
  .choice:hover:not(:disabled) {
    border-color: var(--line);
    text-decoration: none;
  }
  .choice[aria-pressed='true'] {
    border-color: var(--accent);
    color: var(--accent);
    font-weight: 600;
  }
  .hint {
    min-height: 36px;
    padding-top: 6px;
    color: var(--muted);
    font-size: 12.5px;
    line-height: 1.35;
  }
  .fit {
    min-height: 24px;
    padding: 0 2px;
    color: var(--accent);
    font-size: 12.5px;
    font-weight: 600;
  }
  .acts {
    display: flex;
    justify-content: space-between;
    margin: 4px -6px 0;
  }
  @media (max-width: 639.98px) {
    dialog {
      top: auto;
      bottom: 0;
      left: 0;
      width: 100vw;
      max-width: none;
      max-height: 62vh;
      border-width: 1px 0 0;
      border-radius: 10px 10px 0 0;
    }
  }
`;
