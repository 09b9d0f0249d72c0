import { type Drawing, drawCard, type Item } from '@trimwell/handout';
import { CARD_BASE, type Sketch } from '@trimwell/sketch';
import { css } from 'lit';
import type { CardView } from '../../session/card-watch.js';
import { DrawingElement } from '../table/drawing-element.js';
import type { SectionLine } from './card-section.js';

/** Height of the letters on the picture, as a share of the card. */
const LETTERS = 24;
/** How far the line of the section reaches over the card, as a share of it. */
const OVER = 0.02;

/** The face that a step is at, with all that lies there after it and nothing more. */
function asBuilt(sketch: Sketch, built: ReadonlySet<string>): Sketch {
  return { ...sketch, pieces: sketch.pieces.map((piece) => ({ ...piece, hidden: !built.has(piece.id) })) };
}

function lineItem({ card }: Sketch, { along, at }: SectionLine): Item {
  const over = Math.max(card.width, card.height) * OVER;
  const [from, to] =
    along === 'x'
      ? [
          { x: -over, y: at },
          { x: card.width + over, y: at },
        ]
      : [
          { x: at, y: -over },
          { x: at, y: card.height + over },
        ];
  return { kind: 'line', key: 'section', role: 'fold', from, to };
}

/** The face that step `index` is at, with all that lies there after it. */
export function stepDrawing({ sketch, sight }: CardView, index: number): Drawing {
  const steps = sight.steps.slice(0, index + 1);
  const face = steps.at(-1)?.face ?? 'front';
  const built = new Set(steps.filter(({ piece }) => piece !== CARD_BASE).map(({ piece }) => piece));
  const size = Math.max(sketch.card.width, sketch.card.height) / LETTERS;
  return drawCard(asBuilt(sketch, built), {
    face,
    size,
    style: { unit: sketch.unit },
    labels: true,
    dimensions: false,
    leaveOutHidden: true,
  });
}

/** The front of the card, with the line along which it is cut through. */
export function lineDrawing({ sketch }: CardView, line: SectionLine): Drawing {
  const drawing = drawCard(sketch, { face: 'front', style: { unit: sketch.unit }, dimensions: false });
  const room = Math.max(sketch.card.width, sketch.card.height) * OVER;
  const { width, height } = sketch.card;
  return {
    ...drawing,
    box: { x: -room, y: -room, width: width + 2 * room, height: height + 2 * room },
    items: [...drawing.items.filter(({ role }) => role !== 'fold'), lineItem(sketch, line)],
  };
}

/** The picture of a step: what is new has a broken, thick outline. */
export class StepDrawingElement extends DrawingElement {
  static override readonly styles = [
    ...DrawingElement.styles,
    css`
      div {
        height: 100%;
      }
      g.lit > path[data-role='outline'] {
        /* Papers keep their colours by night, and so does what is drawn on them. */
        stroke: #97371c;
        stroke-width: 2.6;
        stroke-dasharray: 7 4;
      }
      text[data-role='label'] {
        stroke: #fffdf6;
        stroke-width: 0.22em;
        vector-effect: none;
        stroke-linejoin: round;
        paint-order: stroke;
      }
      [data-role='fold'] {
        stroke: #22302f;
        stroke-width: 1.6;
        stroke-dasharray: 9 3 2 3;
      }
    `,
  ];
}
