import { afterEach, beforeAll, beforeEach, expect, test, vi } from 'vitest';
import { AssemblyWorker, planningPort } from '../../../../../tests/kit/assembly-worker.js';
import { PATIENCE } from '../../../../../tests/kit/patience.js';
import { sampleSketch } from '../../../../../tests/kit/sample-sketch.js';
import type { Keeper } from '../../keeping/keeper.js';
import { setKeeper } from '../../keeping/keepers.js';
import { rememberPost } from '../../keeping/post-choice.js';
import { cardWatchOf } from '../../session/card-watch-of.js';
import { Session } from '../../session/session.js';
import type { Wish, WritePort } from '../../session/write-messages.js';
import { Writer } from '../../session/writer.js';
import { Pointing } from '../pointing.js';
import { PagesMakerElement } from './pages-maker.js';
import { choicesOf } from './remembered-choices.js';

beforeAll(() => customElements.define('trimwell-pages-maker', PagesMakerElement));
beforeEach(() => void vi.stubGlobal('Worker', AssemblyWorker));
afterEach(() => document.body.replaceChildren());

/** The maker of a session's pages, and all that it wishes for; of these no file is ever made. */
function lay(session: Session) {
  const wishes: Wish[] = [];
  const pages = { title: '', author: '', language: 'en', pages: [], looks: {} };
  const port: WritePort = {
    onmessage: null,
    postMessage: ({ number, wish }) => {
      wishes.push(wish);
      if (wish.make === 'pages')
        port.onmessage?.({ data: { number, kind: 'made', made: { make: 'pages', pages, note: null } } });
    },
    terminate: () => {},
  };
  const element = document.createElement('trimwell-pages-maker') as PagesMakerElement;
  const writer = new Writer(() => port);
  Object.assign(element, { session, pointing: new Pointing(), writer, choices: choicesOf(session) });
  document.body.append(element);
  return { element, wishes };
}

test('the country of the post that was chosen for the card goes with the pages, shown and saved', async () => {
  const session = new Session(sampleSketch(), planningPort());
  const { element, wishes } = lay(session);
  await vi.waitUntil(() => wishes.length === 1, PATIENCE);
  cardWatchOf(session).post = 'GB';
  await vi.waitUntil(() => wishes.length === 2, PATIENCE);
  await element.updateComplete;
  element.renderRoot.querySelector<HTMLElement>('.save')?.click();
  await vi.waitUntil(() => wishes.length === 3, PATIENCE);
  expect(wishes).toMatchObject([
    { make: 'pages', post: null },
    { make: 'pages', post: 'GB' },
    { make: 'pdf', post: 'GB' },
  ]);
});

test('one that was chosen on this machine goes with them at once', async () => {
  const session = new Session(sampleSketch(), planningPort());
  setKeeper(session, {} as Keeper);
  rememberPost('CA');
  const { wishes } = lay(session);
  await vi.waitUntil(() => wishes.length === 1, PATIENCE);
  expect(wishes).toMatchObject([{ make: 'pages', post: 'CA' }]);
  rememberPost(null);
  setKeeper(session, null);
});
