import type { Session } from '../../session/session.js';
import type { Pointing } from '../pointing.js';
import type { TrayName } from './tray-names.js';

/** What lies in a tray: an element that gets the session, and what it should show first. */
export interface TrayContent extends HTMLElement {
  session: Session;
  pointing: Pointing;
  about?: string | null;
}

/** How a tray is headed, and how its content comes: `load` defines `tag`. */
export interface TrayEntry {
  readonly heading: string;
  readonly tag: string;
  readonly load: () => Promise<unknown>;
}

/** Every tray. Its content is a bundle of its own, so that the table is there before it. */
export const TRAYS: Readonly<Partial<Record<TrayName, TrayEntry>>> = {
  'new card': { heading: 'A new card', tag: 'trimwell-new-card', load: () => import('../beginnings/define.js') },
  card: {
    heading: 'The card and its words',
    tag: 'trimwell-about-card',
    load: () => import('../about-card/define.js'),
  },
  shelf: { heading: 'The shelf', tag: 'trimwell-shelf', load: () => import('../shelf/define.js') },
  tools: { heading: 'Your tools', tag: 'trimwell-tools', load: () => import('../tools/define.js') },
  papers: { heading: 'Papers', tag: 'trimwell-papers', load: () => import('../papers/define.js') },
  'hand on': { heading: 'To hand on', tag: 'trimwell-hand-on-tray', load: () => import('../hand-on/define.js') },
  build: { heading: 'How it is built', tag: 'trimwell-build', load: () => import('../build/define.js') },
  keys: { heading: 'Keys', tag: 'trimwell-keys', load: () => import('../keys/define.js') },
};
