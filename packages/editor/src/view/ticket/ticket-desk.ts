import type { Length } from '@trimwell/geometry';
import { html, type TemplateResult } from 'lit';
import type { Session } from '../../session/session.js';
import type { Command, EditorState } from '../../state/state.js';
import type { Pointing } from '../pointing.js';
import { selectionField } from '../table/selection-field.js';

/** A place may lie off the card, but not beyond what a sketch can hold. */
export const FARTHEST = 2_000 * 640;

/** The ticket as its parts see it. */
export interface TicketDesk {
  readonly session: Session;
  readonly pointing: Pointing;
  readonly state: EditorState;
  /** Does a command, if it applies. */
  run(command: Command): void;
}

export interface LengthRow {
  readonly label: string;
  readonly value: Length;
  readonly least: number;
  readonly locked?: boolean;
  readonly command: (value: Length) => Command;
}

/** A field for one length. */
export function lengthField(desk: TicketDesk, { label, value, least, locked, command }: LengthRow): unknown {
  return selectionField(
    desk.session,
    (run) => html`<trimwell-length
    .value=${value}
    .unit=${desk.state.sketch.unit}
    .least=${least}
    ?disabled=${locked ?? false}
    label=${label}
    @length-change=${(event: CustomEvent<{ value: Length }>) => run(command(event.detail.value))}
  ></trimwell-length>`,
  );
}

/** One of a list, `chosen` of it; null when several pieces differ. */
export interface Choice<T extends string> {
  readonly label: string;
  readonly chosen: T | null;
  readonly options: readonly { readonly value: T; readonly words: string }[];
  readonly locked?: boolean;
  readonly command: (value: T) => Command;
}

/** A list to choose from. What was chosen is set by hand, so that a choice that was refused is shown no longer. */
export function choiceField<T extends string>(desk: TicketDesk, choice: Choice<T>): TemplateResult {
  const { label, chosen, options, locked, command } = choice;
  const choose = ({ target }: Event): void => {
    if (!(target instanceof HTMLSelectElement)) return;
    const option = options.find(({ value }) => value === target.value);
    if (option) desk.run(command(option.value));
  };
  return html`<select aria-label=${label} ?disabled=${locked ?? false} @change=${choose}>
    ${chosen === null ? html`<option value="" selected>differ</option>` : ''}
    ${options.map(({ value, words }) => html`<option value=${value} .selected=${value === chosen}>${words}</option>`)}
  </select>`;
}

/** A whole number or degrees, within bounds; anything else puts back what was there. */
export interface NumberRow {
  readonly label: string;
  readonly value: number | null;
  readonly least: number;
  readonly most: number;
  readonly locked?: boolean;
  readonly command: (value: number) => Command;
}

export function numberField(desk: TicketDesk, row: NumberRow): unknown {
  const { label, value, least, most, locked, command } = row;
  const shown = value === null ? '' : String(value);
  const commit = (target: EventTarget | null, run: (command: Command) => void): void => {
    if (!(target instanceof HTMLInputElement)) return;
    const typed = target.valueAsNumber;
    if (Number.isFinite(typed) && typed >= least && typed <= most) run(command(typed));
    else target.value = shown;
  };
  return selectionField(
    desk.session,
    (run) => html`<input
    class="number"
    type="number"
    step="1"
    min=${least}
    max=${most}
    aria-label=${label}
    ?disabled=${locked ?? false}
    .value=${shown}
    @keydown=${(event: KeyboardEvent) => keyOfField(event, shown)}
    @change=${({ target }: Event) => commit(target, run)}
  />`,
  );
}

/**
 * Keys typed into a field are for the field. Escape puts back what was `shown`; with nothing to put back it is for what the
 * field stands in.
 */
export function keyOfField(event: KeyboardEvent, shown: string): void {
  event.stopPropagation();
  const { target } = event;
  if (event.key !== 'Escape' || !(target instanceof HTMLInputElement) || target.value === shown) return;
  event.preventDefault();
  target.value = shown;
}

/**
 * A button for `command`, which does nothing while the command does not apply. It keeps the focus all the same: what was just
 * done often leaves nothing more to do, and the keyboard must not lose its place by that.
 */
export function commandButton(desk: TicketDesk, words: string, command: Command, name = ''): TemplateResult {
  return html`<button class=${name} aria-disabled=${String(!command(desk.state))} @click=${() => desk.run(command)}>${words}</button>`;
}

/** What all `values` are, or null when they differ. */
export function common<T>(values: readonly T[]): T | null {
  const [first, ...others] = values;
  return first !== undefined && others.every((other) => other === first) ? first : null;
}
