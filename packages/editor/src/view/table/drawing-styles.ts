import { css } from 'lit';

/** How the roles of a drawing look on the table; line kinds carry the meaning, colours only help. */
export const drawingStyles = css`
  svg {
    display: block;
    width: 100%;
    height: 100%;
    overflow: visible;
    fill: none;
  }
  [data-role] {
    vector-effect: non-scaling-stroke;
  }
  text {
    stroke: none;
    font-family: var(--font);
  }
  [data-role='shadow'] {
    fill: #1d2423;
    fill-opacity: 0.16;
    stroke: none;
    transform: translate(14px, 22px);
  }
  [data-role='sheet'],
  [data-role='outline'] {
    stroke: rgb(29 36 35 / 0.35);
    stroke-width: 1;
  }
  [data-role='margin'] {
    stroke: #8a8577;
    stroke-dasharray: 3 3;
  }
  [data-role='blank'] {
    fill: #fffdf7;
    fill-opacity: 0.74;
    stroke: #22302f;
    stroke-width: 0.6;
    transition: fill-opacity 120ms;
  }
  [data-role='blank'].lit {
    fill: #fbd9a8;
    fill-opacity: 0.95;
  }
  [data-role='offcut'] {
    fill: #fffdf7;
    fill-opacity: 0.46;
  }
  [data-role='cut'] {
    stroke: #22302f;
    stroke-width: 1.2;
  }
  [data-role='leader'] {
    stroke: var(--line);
    stroke-width: 1;
  }
  text[data-role='label'],
  text[data-role='figure'] {
    fill: #22302f;
  }
  text[data-role='label'] {
    font-weight: 600;
  }
  text[data-role='note'] {
    fill: #4d554f;
  }
  @media (prefers-reduced-motion: reduce) {
    [data-role='blank'] {
      transition: none;
    }
  }
`;
