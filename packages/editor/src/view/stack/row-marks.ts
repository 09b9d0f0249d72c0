import { svg } from 'lit';

/** A pin: stuck through the paper when it holds, lying beside it when it does not. */
export function pinMark(held: boolean) {
  return held
    ? svg`<svg viewBox="0 0 16 16" aria-hidden="true"><circle class="full" cx="8" cy="5" r="3.2"></circle><path d="M8 8.2V14"></path></svg>`
    : svg`<svg viewBox="0 0 16 16" aria-hidden="true"><circle cx="5.5" cy="6" r="3"></circle><path d="M7.8 8.2L12.5 13"></path></svg>`;
}

/** A slip: its edge drawn out when it is seen, dashed as hidden edges are drawn when it is not. */
export function slipMark(hidden: boolean) {
  return hidden
    ? svg`<svg viewBox="0 0 16 16" aria-hidden="true"><path class="dashed" d="M4.5 4.5H14L11.5 11.5H2Z"></path></svg>`
    : svg`<svg viewBox="0 0 16 16" aria-hidden="true"><path d="M4.5 4.5H14L11.5 11.5H2Z"></path></svg>`;
}
