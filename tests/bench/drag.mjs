import { chromium } from '@playwright/test';
import { CHROMIUM_ARGS, ensureChromium } from '../run/find-chromium.mjs';
import { percentile, row } from './measure.mjs';
import { served } from './served.mjs';

const MOVES = 300;

/** Records every frame, every pointer move, and for every new plan the frame that has painted its guide. */
function record() {
  const log = { frames: [], moves: [], painted: [], waiting: [] };
  window.trimwellLog = log;
  const frame = (now) => {
    log.frames.push(now);
    // A plan that arrived before the last frame was painted by it.
    for (const moved of log.waiting.splice(0)) log.painted.push(now - moved);
    requestAnimationFrame(frame);
  };
  requestAnimationFrame(frame);
  let newest = 0;
  window.addEventListener(
    'pointermove',
    (event) => {
      newest = event.timeStamp;
      log.moves.push(newest);
    },
    true,
  );
  document.querySelector('trimwell-editor').addEventListener('plan-change', () => {
    if (newest > 0) requestAnimationFrame(() => log.waiting.push(newest));
  });
}

/** A sketch of twelve pieces and twelve cards: the first card with more strips. */
function fillCard() {
  const { session } = document.querySelector('trimwell-editor');
  const strip = session.state.sketch.pieces.find(({ id }) => id === 'strip');
  const missing = 12 - session.state.sketch.pieces.length;
  const edits = Array.from({ length: missing }, (_, n) => ({
    do: 'add-piece',
    piece: {
      ...strip,
      id: `more-${n}`,
      name: `More ${n}`,
      width: strip.width - 8128 * (n + 1),
      from: ['rowan', 'berries', 'spruce'][n % 3],
    },
  }));
  session.dispatch({ event: 'bench.fill', edits, at: 0 });
}

/** A sketch of forty pieces: the first card with small ones in rows. */
function fillFortyPieces() {
  const { session } = document.querySelector('trimwell-editor');
  const strip = session.state.sketch.pieces.find(({ id }) => id === 'strip');
  const missing = 40 - session.state.sketch.pieces.length;
  const edits = Array.from({ length: missing }, (_, n) => ({
    do: 'add-piece',
    piece: {
      ...strip,
      id: `small-${n}`,
      name: `Small ${n}`,
      punched: {},
      x: 4064 + (n % 6) * 10160,
      y: 6096 + Math.floor(n / 6) * 13208,
      width: 8128,
      height: 8128 + 1016 * (n % 3),
      from: ['rowan', 'berries', 'spruce'][n % 3],
    },
  }));
  session.dispatch({ event: 'bench.fill', edits, at: 0 });
}

async function drag(page, from, to) {
  const cdp = await page.context().newCDPSession(page);
  const mouse = (type, { x, y }, buttons) =>
    cdp.send('Input.dispatchMouseEvent', { type, x, y, button: 'left', buttons, clickCount: 1 });
  await mouse('mousePressed', from, 1);
  for (let move = 1; move <= MOVES; move += 1) {
    const share = Math.abs(((move / 75) % 2) - 1);
    const at = { x: to.x + (from.x - to.x) * share, y: to.y + (from.y - to.y) * share };
    await mouse('mouseMoved', at, 1);
    await page.waitForTimeout(8);
  }
  await mouse('mouseReleased', from, 0);
}

async function measured(page, work) {
  await page.evaluate(() => {
    Object.assign(window.trimwellLog, { frames: [], moves: [], painted: [], waiting: [] });
  });
  await work();
  const log = await page.evaluate(() => window.trimwellLog);
  return {
    frames: log.frames.slice(1).map((now, index) => now - log.frames[index]),
    painted: log.painted,
    moves: log.moves.length,
  };
}

/** Opens the first card, filled by `fill`, and waits for its plan; then the processor is slowed down. */
async function prepared(page, url, slowdown, fill) {
  await page.goto(url);
  const settled = () =>
    page.waitForFunction(() => {
      const plan = document.querySelector('trimwell-editor')?.session?.plan;
      return plan?.batch && !plan.stale && !plan.searching;
    });
  await settled();
  await page.evaluate(fill);
  await settled();
  await page.waitForTimeout(3000);
  const cdp = await page.context().newCDPSession(page);
  await cdp.send('Emulation.setCPUThrottlingRate', { rate: slowdown });
  await page.evaluate(record);
}

const slowed = (slowdown) => (slowdown === 1 ? '' : `, CPU slowed ${slowdown} times`);

const spread = (values) =>
  [0.5, 0.95, 0.99].map((share) => `${share * 100} % ${percentile(values, share).toFixed(1)} ms`).join('   ');

/** Frames while one of forty pieces is dragged across the card, and while ten of them are. */
export async function moveOneOfForty(page, url, slowdown) {
  await prepared(page, url, slowdown, fillFortyPieces);
  const box = await page.locator('trimwell-face [data-piece="small-20"] path[data-role="outline"]').boundingBox();
  const from = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  const to = { x: from.x - 70, y: from.y + 60 };
  const still = await measured(page, () => drag(page, { x: 5, y: 300 }, { x: 5, y: 360 }));
  const one = await measured(page, () => drag(page, from, to));
  await page.evaluate(() => {
    const selection = Array.from({ length: 10 }, (_, n) => `small-${n + 15}`);
    document.querySelector('trimwell-editor').session.dispatch({ event: 'piece.select', edits: [], selection, at: 0 });
  });
  const ten = await measured(page, () => drag(page, from, to));
  const ratio = ({ frames }) => `${(percentile(frames, 0.5) / percentile(still.frames, 0.5)).toFixed(2)} x`;
  row(`baseline frames, pointer beside a card of 40 pieces${slowed(slowdown)}`, spread(still.frames));
  row(`frames while 1 of 40 pieces is moved${slowed(slowdown)}`, spread(one.frames), ratio(one));
  row(`frames while 10 of 40 pieces are moved${slowed(slowdown)}`, spread(ten.frames), ratio(ten));
}

async function run(page, url, slowdown) {
  await prepared(page, url, slowdown, fillCard);
  await page.evaluate(() =>
    document
      .querySelector('trimwell-editor')
      .session.dispatch({ event: 'piece.select', edits: [], selection: ['strip'], at: 0 }),
  );
  const box = await page.locator('trimwell-face [data-piece="strip"] path[data-role="outline"]').boundingBox();
  const edge = { x: box.x + box.width / 2, y: box.y + box.height };
  const still = await measured(page, () => drag(page, { x: 5, y: 300 }, { x: 5, y: 360 }));
  const pulled = await measured(page, () => drag(page, edge, { x: edge.x, y: edge.y + 60 }));
  const name = slowed(slowdown);
  const figures = (values) =>
    `median ${percentile(values, 0.5).toFixed(1)} ms   99 % ${percentile(values, 0.99).toFixed(1)} ms`;
  row(`baseline frames, pointer beside the card${name}`, figures(still.frames));
  row(
    `frames while a handle is pulled${name}`,
    figures(pulled.frames),
    `${(percentile(pulled.frames, 0.5) / percentile(still.frames, 0.5)).toFixed(2)} x`,
  );
  row(
    `pointer move to painted guide${name}`,
    figures(pulled.painted),
    `${pulled.painted.length} plans in ${pulled.moves} moves`,
  );
}

/** Frames and pointer-to-guide times of a real drag in a real browser. */
export async function bench() {
  await served(async (url) => {
    const browser = await chromium.launch({ executablePath: ensureChromium(), args: CHROMIUM_ARGS });
    for (const slowdown of [1, 4]) {
      const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
      await run(page, url, slowdown);
      await page.close();
      const full = await browser.newPage({ viewport: { width: 1280, height: 800 } });
      await moveOneOfForty(full, url, slowdown);
      await full.close();
    }
    await browser.close();
  });
}
