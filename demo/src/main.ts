import '@trimwell/editor/define';
import { sharedCode } from '@trimwell/editor';
import type { Sketch } from '@trimwell/sketch';
import { CARDS, firstCard } from './cards.js';

const editor = document.querySelector('trimwell-editor');
const cards = document.querySelector('.cards');
const lamp = document.querySelector('.lamp');
if (!editor || !cards || !(lamp instanceof HTMLButtonElement)) throw new Error('The page lacks its table.');

/** What was last on the table of each card, so that going from one to another shows it as it was left. */
const tables = new Map<string, Sketch>(CARDS.map((card) => [card.id, card]));

function show(id: string): void {
  const sketch = tables.get(id);
  if (sketch && editor) editor.sketch = sketch;
  mark();
}

/** The card on the table may also have come from the shelf, from a link or from the last visit. */
function mark(): void {
  for (const button of cards?.querySelectorAll('button') ?? [])
    button.setAttribute('aria-pressed', String(button.value === editor?.sketch?.id));
}

editor.addEventListener('sketch-change', () => {
  const { sketch } = editor;
  if (sketch && tables.has(sketch.id)) tables.set(sketch.id, sketch);
});
editor.addEventListener('plan-change', mark);

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
show(firstCard().id);

/** A link may carry a sketch; it is taken out of the address, so that a reload shows what has become of it. */
async function openLink(): Promise<void> {
  const code = sharedCode(location.hash);
  if (code === null || !editor) return;
  history.replaceState(null, '', `${location.pathname}${location.search}`);
  const reading = await editor.openShared(code);
  if (!reading.ok)
    window.alert(`This link carries no sketch that can be opened.\n${reading.problems[0]?.message ?? ''}`);
}

window.addEventListener('hashchange', () => void openLink());
void openLink();
