import type { WorkList } from '@trimwell/handout';
import { type Child, type Part, part } from '../part.js';
import type { Shown } from './desk-state.js';
import { DESK_WORDS as WORDS } from './desk-words.js';

export { workList } from '@trimwell/handout';

type Task = WorkList['parts'][number]['tasks'][number];

/** All tasks of a work list in a row. */
export function allTasks({ parts }: WorkList): readonly Task[] {
  return parts.flatMap(({ tasks }) => tasks);
}

function sentence({ setting, text }: Task): readonly Child[] {
  return setting === '' ? [text] : [part('b', {}, setting), ' ', text];
}

/** The steps: the one that is next, large, and all of them as a checklist. */
export function stepsChecklist(shown: Shown, work: WorkList): readonly Part[] {
  const { state, acts } = shown;
  const tasks = allTasks(work);
  const next = tasks.findIndex((_, index) => !state.done.has(index));
  const task = tasks[next];
  const last = [...state.done].reduce((most, step) => Math.max(most, step), -1);
  let at = 0;
  const lists = work.parts.map(({ title, note, tasks: own }, index) => {
    const from = at;
    at += own.length;
    return part(
      'section',
      { key: `part ${index}` },
      part('p', {}, part('b', {}, title), note === '' ? null : part('span', { class: 'quiet' }, ` ${note}`)),
      part(
        'ol',
        { start: String(from + 1) },
        own.map((each, place) => {
          const step = from + place;
          return part(
            'li',
            { 'aria-current': step === next ? 'step' : null },
            part(
              'label',
              { class: 'tick' },
              part('input', {
                type: 'checkbox',
                '.checked': state.done.has(step),
                onchange: (event: Event) => acts.step(step, (event.target as HTMLInputElement).checked),
              }),
              part('span', {}, sentence(each)),
            ),
          );
        }),
      ),
    );
  });
  return [
    ...work.cautions.map((text, index) => part('p', { class: 'caution', key: `caution ${index}` }, text)),
    part(
      'div',
      { key: 'next', class: 'next' },
      part(
        'p',
        { 'aria-live': 'polite' },
        task
          ? [part('span', { class: 'quiet' }, `${WORDS.stepOf(next + 1, tasks.length)}. `), ...sentence(task)]
          : WORDS.allDone,
      ),
      part(
        'div',
        { class: 'row' },
        part(
          'button',
          {
            type: 'button',
            key: 'back',
            'aria-disabled': last < 0 ? 'true' : null,
            onclick: () => last >= 0 && acts.step(last, false),
          },
          WORDS.back,
        ),
        part(
          'button',
          {
            type: 'button',
            key: 'next',
            class: 'main',
            'aria-disabled': task ? null : 'true',
            onclick: () => task && acts.step(next, true),
          },
          WORDS.next,
        ),
      ),
    ),
    ...lists,
  ];
}
