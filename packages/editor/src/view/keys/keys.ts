import { css, html, nothing } from 'lit';
import type { SessionChange } from '../../session/session.js';
import { KEY_GROUPS, KEYMAP, type KeyGroup, MORE_KEYS, POINTING } from '../keymap.js';
import { SessionElement } from '../session-element.js';
import { tableStyles } from '../table/table-styles.js';
import { type KeyLine, keyLines, keysText } from './key-text.js';

/** True on a Mac, where the Command key takes the part of Control. */
function onMac(): boolean {
  return /mac/i.test(navigator.platform);
}

/** Every key of the card face, in groups, and what a mouse and a finger do; written from the table that the keys go by. */
export class KeysElement extends SessionElement {
  static override readonly styles = [
    tableStyles,
    css`
      .intro {
        max-width: 66ch;
        margin-bottom: 14px;
        color: var(--muted);
        font: italic 15px / 1.5 var(--heading-font);
      }
      .groups {
        columns: 290px 3;
        column-gap: 34px;
      }
      section {
        break-inside: avoid;
        margin-bottom: 18px;
      }
      h3 {
        margin: 0 0 4px;
        padding-bottom: 3px;
        border-bottom: 1px solid var(--line);
        font: 500 16px / 1.3 var(--heading-font);
      }
      dl {
        display: grid;
        grid-template-columns: 122px minmax(0, 1fr);
        gap: 3px 10px;
        margin: 0;
        font-size: 13px;
        line-height: 1.35;
      }
      .pointing dl {
        grid-template-columns: 140px minmax(0, 1fr);
      }
      dt {
        font-weight: 600;
        white-space: pre-wrap;
      }
      dd {
        margin: 0;
        color: var(--muted);
      }
    `,
  ];

  protected concerns(_change: SessionChange): boolean {
    return false;
  }

  protected override render() {
    const mac = onMac();
    return html`<p class="intro">
        These keys work while the focus is on the card or one of its pieces, and only there; so those of a single letter
        are not in the way of what you type, or of speech input, anywhere else.
      </p>
      <div class="groups">
        ${KEY_GROUPS.map((group) => lines(group, linesOf(group, mac)))}
        ${lines(
          'By mouse and finger',
          POINTING.map(({ how, label }) => ({
            how: how.replaceAll('Mod', mac ? '⌘' : 'Ctrl').replaceAll('+', ' '),
            label,
          })),
          'pointing',
        )}
      </div>`;
  }
}

/** The lines of one group: what is done by the focus, then the table of keys, then the page's own copying. */
function linesOf(group: KeyGroup, mac: boolean): readonly KeyLine[] {
  const rows = KEYMAP.filter((row) => row.group === group);
  const more = MORE_KEYS.filter((row) => row.group === group);
  return [...more.map(({ keys, label }) => ({ how: keysText(keys, mac), label })), ...keyLines(rows, mac)];
}

function lines(heading: string, all: readonly KeyLine[], name = '') {
  return all.length === 0
    ? nothing
    : html`<section class=${name}>
        <h3>${heading}</h3>
        <dl>${all.map(({ how, label }) => html`<dt>${how}</dt><dd>${label}</dd>`)}</dl>
      </section>`;
}
