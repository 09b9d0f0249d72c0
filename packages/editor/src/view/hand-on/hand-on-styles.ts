import { css } from 'lit';

/** What the ways to hand on share: choices at the side, the preview beside them, both under each other on a phone. */
export const handOnStyles = css`
  .maker {
    display: grid;
    grid-template-columns: minmax(220px, 264px) minmax(0, 1fr);
    gap: 16px 34px;
    align-items: start;
  }
  .choices {
    position: sticky;
    top: 0;
    display: grid;
    gap: 10px;
  }
  .row {
    display: grid;
    grid-template-columns: 84px minmax(0, 1fr);
    gap: 2px 12px;
    align-items: baseline;
  }
  .row > :first-child {
    color: var(--muted);
    font-size: 12.5px;
  }
  select,
  .row input {
    width: 100%;
    min-width: 0;
  }
  trimwell-length {
    width: 92px;
  }
  label.pick {
    display: flex;
    align-items: baseline;
    gap: 8px;
    min-height: 28px;
    cursor: pointer;
  }
  label.pick input {
    flex: none;
    width: 15px;
    height: 15px;
    min-height: 0;
    margin: 0;
    accent-color: var(--accent);
    translate: 0 2px;
  }
  .under {
    margin: 0;
    color: var(--muted);
    font-size: 12.5px;
    line-height: 1.4;
  }
  .file {
    overflow-wrap: anywhere;
  }
  .save,
  .saving {
    justify-self: start;
  }
  .save {
    min-height: 34px;
    padding: 4px 14px;
    border: 1px solid var(--accent);
    border-radius: 3px;
    background: var(--slip);
  }
  .saving {
    display: flex;
    gap: 10px;
    align-items: center;
    min-height: 34px;
  }
  progress {
    width: 130px;
    accent-color: var(--accent);
  }
  .said:empty {
    display: none;
  }
  .said {
    color: var(--good);
    overflow-wrap: anywhere;
  }
  .problem {
    color: var(--accent);
    overflow-wrap: anywhere;
  }
  .of {
    margin: 0 0 6px;
    color: var(--muted);
    font-size: 12.5px;
  }
  .preview {
    min-width: 0;
  }
  @media (max-width: 760px) {
    .maker {
      grid-template-columns: minmax(0, 1fr);
    }
    .choices {
      position: static;
    }
  }
`;
