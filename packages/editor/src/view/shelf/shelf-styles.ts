import { css } from 'lit';

export const shelfStyles = css`
  :host {
    display: grid;
    gap: 10px;
    container-type: inline-size;
  }
  .head {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 4px 16px;
  }
  .find {
    display: flex;
    flex: 1 1 200px;
    align-items: baseline;
    gap: 8px;
    max-width: 340px;
  }
  .find input {
    flex: 1;
    min-width: 0;
  }
  .away,
  .hand {
    padding: 8px 12px;
    background: var(--slip);
    box-shadow: 0 2px 6px rgb(20 25 24 / 0.22);
  }
  .away {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    justify-content: space-between;
    gap: 2px 16px;
    margin-bottom: 4px;
  }
  .hand {
    position: sticky;
    z-index: 2;
    bottom: 0;
    border-top: 2px solid var(--accent);
  }
  .hand h3 {
    margin: 0;
    font: 500 16px / 1.3 var(--heading-font);
    overflow-wrap: anywhere;
  }
  .ways {
    display: flex;
    flex-wrap: wrap;
    gap: 0 10px;
    margin-left: -6px;
  }
  .link {
    display: grid;
    gap: 2px;
    margin-top: 4px;
  }
  .link input {
    width: 100%;
  }
  .none {
    padding: 26px 8px;
    color: var(--muted);
  }
  ul.problems {
    margin: 4px 0;
    padding-left: 18px;
  }
`;
