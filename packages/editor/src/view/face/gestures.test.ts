import { inches } from '@trimwell/geometry';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { PATIENCE } from '../../../../../tests/kit/patience.js';
import { sampleSketch } from '../../../../../tests/kit/sample-sketch.js';
import { Session } from '../../session/session.js';
import { select } from '../../state/commands.js';
import { Pointing } from '../pointing.js';
import { FaceElement } from './face.js';

customElements.define('test-gesture-face', FaceElement);

type Listener = (event: object) => void;
interface Listeners {
  readonly start: Listener;
  readonly move: Listener;
  readonly end: Listener;
}
const bound = vi.hoisted(() => new Map<Element, unknown>());

vi.mock('interactjs', () => ({
  default: (element: Element) => ({
    draggable: ({ listeners }: { readonly listeners: Listeners }) => {
      bound.set(element, listeners);
      const interactable = {
        styleCursor: () => interactable,
        preventDefault: () => interactable,
        unset: () => bound.delete(element),
      };
      return interactable;
    },
  }),
}));

let frames: (() => void)[] = [];

beforeEach(() => {
  frames = [];
  vi.stubGlobal('requestAnimationFrame', (frame: () => void) => frames.push(frame));
  vi.stubGlobal('cancelAnimationFrame', (frame: number) => {
    if (frame > 0) frames[frame - 1] = () => undefined;
  });
});

afterEach(() => {
  document.body.replaceChildren();
  vi.unstubAllGlobals();
});

/** A face on which the strip can be dragged by so many pixels. */
async function open() {
  const face = new FaceElement();
  face.session = new Session(sampleSketch(), { onmessage: null, postMessage: () => {}, terminate: () => {} });
  face.pointing = new Pointing();
  document.body.append(face);
  await face.updateComplete;
  // jsdom lays nothing out.
  const inverse = () => ({ a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 });
  Object.assign(face.svg, { getScreenCTM: () => ({ inverse }) });
  const strip = face.renderRoot.querySelector('[data-piece="strip"]');
  await vi.waitFor(() => expect(strip && bound.has(strip)).toBe(true), PATIENCE);
  const listeners = bound.get(strip as Element) as Listeners;
  const step = (clientX: number) => ({
    clientX,
    clientY: 0,
    clientX0: 0,
    clientY0: 0,
    altKey: false,
    shiftKey: false,
    interaction: { stop: () => undefined },
  });
  return { face, listeners, step };
}

const paint = (): void => {
  for (const frame of frames.splice(0)) frame();
};
const x = ({ session }: FaceElement) => session.state.sketch.pieces.find(({ id }) => id === 'strip')?.x;

test('a drag moves a piece, frame by frame', async () => {
  const { face, listeners, step } = await open();
  listeners.start(step(0));
  listeners.move(step(60));
  paint();
  expect(x(face)).toBeGreaterThan(inches(1 / 4));
  listeners.end(step(60));
  expect(face.session.state.history.past).toHaveLength(1);
  expect(face.session.gesture).toBeNull();
});

test('another sketch on the table ends the drag that was begun on the one before, and is not touched by it', async () => {
  const { face, listeners, step } = await open();
  for (const gone of ['strip', 'liner']) {
    listeners.start(step(0));
    listeners.move(step(30));
    paint();
    listeners.move(step(60));
    const sketch = sampleSketch();
    face.session.open({ ...sketch, pieces: sketch.pieces.filter(({ id }) => id !== gone) });
    const opened = face.session.state;
    expect(face.dragging).toBe(false);
    paint();
    listeners.move(step(90));
    paint();
    listeners.end(step(90));
    expect(face.session.state).toBe(opened);
    expect(face.session.gesture).toBeNull();
    face.session.open(sketch);
  }
  face.run(select('strip'));
  expect(face.session.state.selection).toEqual(['strip']);
});
