/** What opens by "Make it yours": plain rows under thin rules, as on a printed form. */
export const DESK_STYLES = `.desk,.inside{display:grid;grid-template-columns:minmax(0,1fr)}
.desk{gap:12px;border-top:1px solid var(--line);padding-top:14px}
.row{display:flex;flex-wrap:wrap;gap:8px 16px;align-items:center}
.count{width:5.5em}.side{width:7.5em}.name{width:12em}
input[type=color]{width:44px;padding:3px}
input[type=checkbox]{min-height:0;width:20px;height:20px;margin:2px 8px 2px 0;flex:none;align-self:flex-start;accent-color:var(--accent)}
input[type=file]{font-size:.85em;border-style:dashed;max-width:100%}
.tick{display:flex;align-items:baseline;min-height:28px;padding:2px 0}
.fold{border-top:1px solid var(--line)}
summary{cursor:pointer;font-weight:600;padding:9px 2px;list-style-position:outside;margin-inline-start:1.1em}
.inside{gap:10px;padding:2px 0 12px}
.paper{display:flex;flex-wrap:wrap;gap:8px 16px;align-items:center;margin:0;min-width:0;border:1px solid var(--line);border-radius:4px;padding:8px 12px 12px}
.paper label{display:inline-flex;flex-wrap:wrap;gap:4px 6px;align-items:center;min-width:0}
legend{padding:0 6px;font-weight:600}
.from select{min-width:0}
.from{display:flex;flex-wrap:wrap;gap:2px 10px;align-items:center;justify-content:space-between;padding:3px 0}
.result{background:var(--table);border-inline-start:4px solid var(--accent);padding:10px 14px;border-radius:0 4px 4px 0}
.tally{font-weight:600}
.wrong{border-inline-start:3px solid var(--accent);padding-inline-start:8px}
[aria-invalid=true]{outline:2px dashed var(--accent);outline-offset:1px}
.caution{font-size:.9em;color:var(--muted)}
.sheets{display:grid;gap:16px;grid-template-columns:repeat(auto-fill,minmax(min(100%,240px),1fr))}
.cards{display:grid;gap:12px;grid-template-columns:repeat(auto-fill,minmax(112px,1fr))}
figure{margin:0;background:var(--table);border-radius:4px;padding:10px}
figcaption{font-size:.88em;color:var(--muted);padding-top:6px}
.guide svg{max-height:440px;color:#22302f}
[data-role=sheet]{stroke:#22302f;stroke-width:3.5}
[data-role=margin]{stroke:#8a8577;stroke-width:2;stroke-dasharray:6 6}
[data-role=blank]{stroke:#22302f;stroke-width:2;fill:#fff;fill-opacity:.76}
[data-role=offcut]{fill:#fff;fill-opacity:.42}
[data-role=cut]{stroke:#22302f;stroke-width:5}
:is([data-role=figure],[data-role=note]){fill:#22302f;stroke:#fffdf6;stroke-width:.16em;stroke-linejoin:round;paint-order:stroke}
.card text[data-role=figure]{fill:currentColor;stroke:none}
.next{background:var(--table);border-radius:4px;padding:12px 14px;display:grid;gap:10px}
.next p{font-size:1.08em}
ol{margin:4px 0 8px;padding-inline-start:2em}
ul{margin:0;padding-inline-start:1.4em}
li[aria-current]{background:var(--table)}
[aria-disabled=true],:disabled{opacity:.65;cursor:default}
.link{display:flex;flex:1 1 220px;flex-wrap:wrap;gap:4px 8px;align-items:center}
.link input{flex:1 1 160px;min-width:0}
a{color:var(--accent);display:inline-block;min-height:24px}
@media(prefers-reduced-motion:no-preference){.result{transition:opacity .2s}}
.result[data-searching]{opacity:.92}
@media print{.row button,.link,input[type=file],summary{display:none}figure{break-inside:avoid}}`;
