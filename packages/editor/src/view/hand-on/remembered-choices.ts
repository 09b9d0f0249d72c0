import { inches, millimetres, ticks } from '@trimwell/geometry';
import type { Session } from '../../session/session.js';
import type { CutChoice, ListChoice, PagesChoice, PictureChoice, WebChoice } from '../../session/write-messages.js';

/** What can be handed on, as a file or to be copied. */
export const KINDS = ['pages', 'cut files', 'list', 'picture', 'web'] as const;
export type Kind = (typeof KINDS)[number];

/** What was chosen last in the tray, for as long as the page is open. A password is never among it. */
export interface Choices {
  kind: Kind;
  pages: PagesChoice;
  cut: CutChoice;
  list: ListChoice;
  picture: PictureChoice & { readonly format: 'png' | 'svg' };
  web: WebChoice;
}

/** By the session, and by how often another sketch was put on its table. */
const remembered = new WeakMap<Session, { readonly opening: number; readonly choices: Choices }>();

/** The choices of a session; at first what suits its unit. */
export function choicesOf(session: Session): Choices {
  const known = remembered.get(session);
  if (known?.opening === session.openings) return known.choices;
  const { unit } = session.document;
  const metric = unit === 'mm';
  const choices: Choices = {
    kind: 'pages',
    pages: { paper: metric ? 'a4' : 'letter', language: 'en', unit, templates: false },
    cut: {
      ...{ format: 'svg', each: 'sheet', whole: true, unit },
      ...{ gap: metric ? millimetres(1.5) : inches(1 / 16), margin: ticks(0) },
    },
    list: { format: 'csv', arrange: 'batch' },
    picture: { of: 'card', sheet: 1, width: 1200, height: 800, titled: true, format: 'png' },
    web: { way: 'element', files: '/trimwell/', handout: '', unit },
  };
  remembered.set(session, { opening: session.openings, choices });
  return choices;
}
