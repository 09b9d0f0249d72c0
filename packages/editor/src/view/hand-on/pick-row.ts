import { html, type TemplateResult } from 'lit';

/** A choice between words: its label, and a list to pick from. */
export function pickRow<Value extends string>(
  id: string,
  label: string,
  words: Readonly<Record<Value, string>>,
  chosen: Value,
  take: (value: Value) => void,
): TemplateResult {
  const values = Object.keys(words) as Value[];
  return html`<div class="row">
    <label for=${id}>${label}</label>
    <select
      id=${id}
      @change=${({ target }: Event) => {
        const picked = values.find((value) => target instanceof HTMLSelectElement && value === target.value);
        if (picked !== undefined) take(picked);
      }}
    >
      ${values.map((value) => html`<option value=${value} ?selected=${value === chosen}>${words[value]}</option>`)}
    </select>
  </div>`;
}
