const NIGHT =
  'color-scheme:dark;--d-slip:#2b3232;--d-ink:#ece7db;--d-muted:#b4bab2;--d-line:#4b5556;--d-accent:#f0a17f;--d-table:#222828;--d-on:#23292a';

/**
 * The first look. Everything inside begins from the browser's own defaults (`all: initial`), whatever the page's rules have
 * left to inherit; only the page's font comes in, and its size within bounds.
 */
export const FIRST_STYLES = `:host{display:block}
:host([hidden]),.sheet[hidden]{display:none}
.sheet{all:initial;display:flex;flex-direction:column;gap:12px;box-sizing:border-box;position:relative;overflow:clip;direction:ltr;
--d-slip:#fffdf7;--d-ink:#22302f;--d-muted:#545d58;--d-line:#d8d0bf;--d-accent:#97371c;--d-table:#f3eee3;--d-on:#fffdf7;
--slip:var(--trimwell-slip,var(--d-slip));--ink:var(--trimwell-ink,var(--d-ink));--muted:var(--trimwell-muted,var(--d-muted));--line:var(--trimwell-line,var(--d-line));--accent:var(--trimwell-accent,var(--d-accent));--table:var(--trimwell-table,var(--d-table));--on:var(--trimwell-on-accent,var(--d-on));--focus:var(--trimwell-focus,var(--ink));
color-scheme:light;color:var(--ink);background:var(--slip);border:1px solid var(--line);border-radius:var(--trimwell-radius,4px);padding:clamp(12px,4%,22px);
font-family:var(--trimwell-font,inherit);font-size:clamp(14px,1em,18px);line-height:1.45;overflow-wrap:anywhere;container-type:inline-size}
.sheet *{box-sizing:border-box}
:host([theme=dark]) .sheet{${NIGHT}}
@media(prefers-color-scheme:dark){:host(:not([theme=light])) .sheet{${NIGHT}}}
.head{display:flex;flex-wrap:wrap;gap:2px 12px;justify-content:space-between;align-items:baseline}
.head b{font-family:var(--trimwell-heading-font,inherit);font-weight:600;font-size:1.25em;line-height:1.25}
.head span,.quiet,caption{color:var(--muted);font-size:.9em}
.look{flex:1 1 auto;min-height:0;display:grid;gap:14px 24px;align-content:safe center}
.look[tabindex]{overflow:auto}
.card{display:grid;justify-items:center;min-height:140px}
svg{display:block;width:100%;height:auto;max-height:380px;fill:none}
.card svg{max-width:360px}
[data-role=shadow]{fill:#1d2423;fill-opacity:.14;transform:translate(6px,9px)}
[data-role=outline]{stroke:rgb(29 36 35/.4);stroke-width:1.5}
[data-role=fold]{stroke-dasharray:20 8}
table{border-collapse:collapse;width:100%;align-self:start;font-size:.92em}
caption{text-align:start;padding-bottom:4px}
:is(th,td){padding:4px 10px 4px 0;border-bottom:1px solid var(--line);text-align:start;vertical-align:baseline;font-weight:400}
thead th{color:var(--muted);font-size:.9em}
@container (min-width:330px){:is(th,td):not(.size,.few){min-width:6.2em}.size{white-space:nowrap}}
th b{display:inline-block;min-width:1.3em;font-weight:600}
.size{font-variant-numeric:tabular-nums}
.bar{display:flex;flex-wrap:wrap;gap:8px 16px;align-items:center;justify-content:space-between}
p{margin:0}
@container(max-width:359px){table{font-size:.82em}:is(th,td){padding-inline-end:7px;overflow-wrap:break-word}}
@container(min-width:520px){.look{grid-template-columns:minmax(0,2fr) minmax(0,3fr)}.card{position:sticky;top:12px;align-self:start}}`;
