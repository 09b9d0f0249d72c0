import '@trimwell/editor/define';
import { CARDS } from './cards.js';

for (const [index, editor] of [...document.querySelectorAll('trimwell-editor')].entries()) {
  const card = CARDS[index];
  if (card) editor.sketch = card;
}
