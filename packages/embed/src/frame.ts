import { frameCode, parentOrigin } from './state/frame-address.js';

/**
 * The page that stands in a frame: shows the sketch whose share code is the first part of its fragment, and tells its height
 * to the page around it. It listens to nobody.
 */
function show(): void {
  const place = document.querySelector('#place');
  if (!place) return;
  const wishes = new URLSearchParams(location.search);
  const sketch = document.createElement('trimwell-sketch');
  sketch.setAttribute('code', frameCode(location.hash));
  for (const name of ['theme', 'unit']) {
    const wish = wishes.get(name);
    if (wish !== null) sketch.setAttribute(name, wish);
  }
  sketch.addEventListener('sketch-read', () => {
    document.title = (sketch as HTMLElement & { sketch?: { title: string } }).sketch?.title ?? document.title;
  });
  place.replaceChildren(sketch);
  const origin = parentOrigin(wishes.get('origin'), document.referrer);
  if (parent !== window && origin !== null) tellHeight(place, origin);
}

/** Posts `{ trimwell: 'height', height }` in pixels to the page around, when it has changed, at most once a frame. */
function tellHeight(place: Element, origin: string): void {
  let told = 0;
  let waiting = false;
  const tell = (): void => {
    waiting = false;
    const height = Math.ceil(place.getBoundingClientRect().height);
    if (height === told) return;
    told = height;
    parent.postMessage({ trimwell: 'height', height }, origin);
  };
  new ResizeObserver(() => {
    if (waiting) return;
    waiting = true;
    requestAnimationFrame(tell);
  }).observe(place);
}

show();
addEventListener('hashchange', () => {
  const sketch = document.querySelector('trimwell-sketch');
  const code = frameCode(location.hash);
  if (sketch && sketch.getAttribute('code') !== code) sketch.setAttribute('code', code);
});
