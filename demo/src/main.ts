import '@trimwell/editor/define';
import type { Sketch } from '@trimwell/sketch';
import { CARDS, firstCard } from './cards.js';

const editor = document.querySelector('trimwell-editor');
const cards = document.querySelector('.cards');
const lamp = document.querySelector('.lamp');
if (!editor || !cards || !(lamp instanceof HTMLButtonElement)) throw new Error('The page lacks its table.');

/** What was last on the table of each card, so that going from one to another loses nothing while the page is open. */
const tables = new Map<string, Sketch>(CARDS.map((card) => [card.id, card]));
let shown = firstCard().id;

function show(id: string): void {
  const sketch = tables.get(id);
  if (!sketch || !editor) return;
  shown = id;
  editor.sketch = sketch;
  for (const button of cards?.querySelectorAll('button') ?? [])
    button.setAttribute('aria-pressed', String(button.value === id));
}

editor.addEventListener('sketch-change', () => {
  if (editor.sketch) tables.set(shown, editor.sketch);
});

for (const { id, title } of CARDS) {
  const button = document.createElement('button');
  Object.assign(button, { type: 'button', value: id, textContent: title });
  button.addEventListener('click', () => show(id));
  cards.append(button);
}

function light(dark: boolean): void {
  document.documentElement.classList.toggle('lamp', dark);
  lamp?.setAttribute('aria-pressed', String(dark));
  if (editor) editor.theme = dark ? 'dark' : 'light';
}

lamp.addEventListener('click', () => light(lamp.getAttribute('aria-pressed') !== 'true'));
light(matchMedia('(prefers-color-scheme: dark)').matches);
show(shown);
