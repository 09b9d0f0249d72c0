import { inches, type Length, millimetres, ticks } from '@trimwell/geometry';
import { afterEach, expect, test } from 'vitest';
import { LengthField, markBeside } from './length-field.js';

customElements.define('test-length', LengthField);

async function field(more: Partial<LengthField> = {}) {
  const element = new LengthField();
  Object.assign(element, { value: inches(5.25), label: 'Width', ...more });
  const changes: Length[] = [];
  element.addEventListener('length-change', (event) => {
    const { value } = (event as CustomEvent<{ value: Length }>).detail;
    changes.push(value);
    element.value = value;
  });
  document.body.append(element);
  await element.updateComplete;
  const box = element.shadowRoot?.querySelector('input');
  if (!box) throw new Error('no box');
  const type = async (text: string) => {
    box.value = text;
    box.dispatchEvent(new Event('input', { bubbles: true }));
    await element.updateComplete;
  };
  const key = async (init: KeyboardEventInit, kind: 'keydown' | 'keyup' = 'keydown') => {
    const event = new KeyboardEvent(kind, { bubbles: true, composed: true, cancelable: true, ...init });
    box.dispatchEvent(event);
    await element.updateComplete;
    return event;
  };
  const text = (selector: string) => element.shadowRoot?.querySelector(selector)?.textContent ?? '';
  return { element, box, type, key, changes, worked: () => text('.worked'), error: () => text('.error') };
}

afterEach(() => document.body.replaceChildren());

test('a sum is worked out under the field while it is typed, and committed by Enter', async () => {
  const { type, key, changes, worked, box } = await field();
  expect(box.value).toBe('5 1⁄4 in');
  await type('5 1/4 - 2*1/8');
  expect(worked()).toBe('= 5 in');
  expect(changes).toEqual([]);
  await key({ key: 'Enter' });
  expect(changes).toEqual([inches(5)]);
  expect(box.value).toBe('5 in');
  expect(worked()).toBe('');
});

test('half a sum is no mistake yet; committed, it is said what is wrong, in place', async () => {
  const { type, key, changes, worked, error, box } = await field();
  await type('5 1/4 -');
  expect([worked(), error()]).toEqual(['', '']);
  await key({ key: 'Enter' });
  expect(error()).toContain('missing at the end');
  expect(box.getAttribute('aria-invalid')).toBe('true');
  expect(box.value).toBe('5 1/4 -');
  await type('2 in * 3 in');
  expect(error()).toBe('');
  await key({ key: 'Enter' });
  expect(error()).toContain('an area');
  expect(changes).toEqual([]);
  const first = await key({ key: 'Escape' });
  expect(first.defaultPrevented).toBe(true);
  expect([box.value, error()]).toEqual(['5 1⁄4 in', '']);
  expect((await key({ key: 'Escape' })).defaultPrevented).toBe(false);
});

test('what is no whole tick says so, before and after', async () => {
  const { type, key, changes, worked, box } = await field();
  await type('2/3 + 0');
  expect(worked()).toMatch(/^≈ /);
  await key({ key: 'Enter' });
  expect(changes).toEqual([10_837]);
  expect(worked()).toMatch(/^≈ /);
  box.dispatchEvent(new FocusEvent('blur'));
  expect(box.value).toMatch(/^≈ /);
});

test('untouched, a figure behind ≈ means the length itself', async () => {
  const { box, changes } = await field({ value: millimetres(105) });
  expect(box.value).toBe('≈ 4 1⁄8 + 0.0089 in');
  box.dispatchEvent(new Event('change'));
  expect(changes).toEqual([]);
});

test('the arrow keys go from mark to mark, with Shift a quarter inch or 5 mm, and never past what is allowed', async () => {
  const { key, changes, element } = await field({ value: ticks(inches(5.25) + 3), least: 0 });
  await key({ key: 'ArrowUp' });
  await key({ key: 'ArrowUp', shiftKey: true });
  await key({ key: 'ArrowDown' });
  expect(changes).toEqual([inches(5 + 5 / 16), inches(5 + 9 / 16), inches(5.5)]);
  element.value = inches(1 / 8);
  await element.updateComplete;
  await key({ key: 'ArrowDown', shiftKey: true });
  expect(changes.at(-1)).toBe(0);
  await key({ key: 'ArrowDown' });
  expect(changes).toHaveLength(4);
  const metric = await field({ value: millimetres(20), unit: 'mm' });
  await metric.key({ key: 'ArrowUp', shiftKey: true });
  await metric.key({ key: 'ArrowDown' });
  expect(metric.changes).toEqual([millimetres(25), millimetres(24)]);
});

test('a key held down commits at once and when it is let go, not in between', async () => {
  const { key, changes, box } = await field();
  await key({ key: 'ArrowUp' });
  for (let n = 0; n < 5; n += 1) await key({ key: 'ArrowUp', repeat: true });
  expect(changes).toEqual([inches(5 + 5 / 16)]);
  expect(box.value).toBe('5 5⁄8 in');
  await key({ key: 'ArrowUp' }, 'keyup');
  expect(changes).toEqual([inches(5 + 5 / 16), inches(5.625)]);
});

test('bounds and a check of its own are said in place', async () => {
  const { type, key, changes, error } = await field({
    least: inches(1),
    most: inches(12),
    check: (value) => (value === inches(2) ? 'Two is taken.' : null),
  });
  await type('13');
  await key({ key: 'Enter' });
  expect(error()).toBe('Allowed: 1 in to 12 in.');
  await type('2');
  await key({ key: 'Enter' });
  expect(error()).toBe('Two is taken.');
  await type('4 + 1/8');
  await key({ key: 'Enter' });
  expect(changes).toEqual([inches(4.125)]);
  expect(error()).toBe('');
});

test('keys stay in the field, and the label names it', async () => {
  const { key, box } = await field();
  let heard = 0;
  document.body.addEventListener('keydown', () => {
    heard += 1;
  });
  await key({ key: 'Delete' });
  await key({ key: 'ArrowUp' });
  expect(heard).toBe(0);
  expect(box.getAttribute('aria-label')).toBe('Width');
});

test('the mark beside a length between two marks is the next one, not the one after', () => {
  const step = ticks(100);
  expect(markBeside(ticks(150), step, 1)).toBe(200);
  expect(markBeside(ticks(150), step, -1)).toBe(100);
  expect(markBeside(ticks(200), step, 1)).toBe(300);
  expect(markBeside(ticks(200), step, -1)).toBe(100);
  expect(markBeside(ticks(-50), step, 1)).toBe(0);
});
