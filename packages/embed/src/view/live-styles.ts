/** What the card in full and its controls need beyond the first look. */
export const LIVE_STYLES = `[data-role=dimension],[data-role=fold],[data-role=leader]{stroke:currentColor;stroke-width:2}
[data-role=hidden]{stroke:#1d2423;stroke-width:1.5;fill:#fffdf7}
[data-role=art]{stroke-width:3.5}
text:not([font-family]){font-family:inherit}
text:not([fill]){fill:currentColor}
text{stroke:none}
text[data-role=label]{fill:#22302f;font-weight:600;stroke:#fffdf6;stroke-width:.25em;stroke-linejoin:round;paint-order:stroke}
button,select,input{font:inherit;color:inherit;min-height:32px;max-width:100%;border:1px solid var(--muted);border-radius:4px;background:var(--slip);padding:3px 12px}
button{cursor:pointer}
button.main{background:var(--accent);border-color:var(--accent);color:var(--on);font-weight:600}
select{padding-inline:8px}
:focus-visible{outline:3px solid var(--focus);outline-offset:2px}
@media(forced-colors:active){.sheet{--ink:CanvasText;--muted:CanvasText;--line:CanvasText;--slip:Canvas;--table:Canvas;--accent:ButtonText;--on:ButtonFace;--focus:Highlight}svg{forced-color-adjust:none;background:#fffdf7;color:#22302f}}
@media print{.sheet{color:#000;background:none;overflow:visible;height:auto!important}.bar,button{display:none}.look[tabindex]{overflow:visible}}`;
