import type { Atom } from './atom.js';
import { blockAt } from './atom.js';
import { variationText } from './change-words.js';
import { columnsOf, frameWidth, type HandoutContext } from './context.js';
import { type Figure, faceFigure } from './face-figure.js';
import { GLUED_FACES, gluingLine } from './gluing.js';
import type { Pager } from './pager.js';
import { capital } from './piece-words.js';
import { POINT } from './sheet-of-paper.js';
import { sizeTable } from './size-table.js';
import { listAtoms, suppliesStory } from './supplies.js';
import { headingAtom, paragraphAtoms, ruleItem, textAtom } from './text-atoms.js';
import { STYLES } from './text-style.js';

/** The height that the card may take on the first page, and what callouts may take when there are many. */
const CARD_SHARE = 0.34;
const MOST_SHARE = 0.8;

function titleAtoms(context: HandoutContext, date: string): readonly Atom[] {
  const { sketch, speech, measure } = context;
  const { say } = speech;
  const width = frameWidth(context);
  const lead = [sketch.number ?? '', say.cardLine(speech.size(sketch.card), sketch.card.fold)].filter(
    (text) => text !== '',
  );
  const credit = [sketch.credit === undefined || sketch.credit === '' ? '' : say.by(sketch.credit), speech.day(date)];
  const line: Atom = {
    height: 8 * POINT,
    before: 5 * POINT,
    draw: ({ x, y }) => [
      blockAt('Artifact', { x, y, width, height: 8 * POINT }, [ruleItem(x, y, width, 'rule:title')]),
    ],
  };
  return [
    textAtom(capital(lead.join(' · ')), STYLES.italic, width, measure),
    textAtom(sketch.title, STYLES.title, width, measure, {
      tag: 'H1',
      mark: { title: sketch.title, level: 1 },
      before: 2 * POINT,
    }),
    textAtom(credit.filter((text) => text !== '').join(' · '), STYLES.lead, width, measure, { before: 2 * POINT }),
    line,
  ];
}

/** Figures side by side, each with its caption below. */
function figuresAtom(
  figures: readonly { readonly figure: Figure; readonly caption: string }[],
  gap: number,
  context: HandoutContext,
): Atom {
  const { measure } = context;
  const caption = STYLES.italic;
  const tall = Math.max(...figures.map(({ figure }) => figure.height));
  const height = Math.ceil(tall + (figures.length > 1 ? caption.leading : 0));
  return {
    height,
    before: 2 * POINT,
    draw: (at) => {
      let x = at.x;
      return figures.flatMap(({ figure, caption: words }) => {
        const box = { x, y: at.y, width: figure.width, height: tall };
        const items = figure.items({ x, y: at.y + (tall - figure.height) / 2 });
        const block = blockAt('Figure', box, items, { alt: figure.alt });
        // Set in the middle, in a box no wider than its words.
        const size = Math.min(figure.width, Math.ceil(measure.width(words, caption.size, caption.face)) + 1);
        const under = textAtom(words, caption, size, measure, { tag: 'Caption' });
        const named = figures.length > 1 ? under.draw({ x: x + (figure.width - size) / 2, y: at.y + tall }) : [];
        x += figure.width + gap;
        return [block, ...named];
      });
    },
  };
}

/** Front and inside, as wide as the page; a front alone is as wide as the column of the sizes. */
function faceAtoms(
  context: HandoutContext,
  two: boolean,
): { readonly atom: Atom; readonly figures: readonly Figure[] } {
  const { sketch, speech, measure, frame } = context;
  const width = two ? frameWidth(context) : columnsOf(context).main;
  const tall = frame.bottom - frame.top;
  const room = { height: Math.round(tall * CARD_SHARE), mostHeight: Math.round(tall * MOST_SHARE) };
  const gap = 12 * POINT;
  const front = two ? Math.round((width - gap) * 0.54) : width;
  const figures = [
    { figure: faceFigure(sketch, 'front', { ...room, width: front }, speech, measure), caption: speech.say.front },
    ...(two
      ? [
          {
            figure: faceFigure(sketch, 'inside', { ...room, width: width - gap - front }, speech, measure),
            caption: speech.say.inside,
          },
        ]
      : []),
  ];
  return { atom: figuresAtom(figures, gap, context), figures: figures.map(({ figure }) => figure) };
}

function variationAtoms(context: HandoutContext, width: number): readonly Atom[] {
  const { sketch, speech, measure } = context;
  if (sketch.variations.length === 0) return [];
  const entries = sketch.variations.map((variation) => [
    { text: variation.name, style: STYLES.strong },
    { text: variation.note, style: STYLES.body },
    { text: capital(variationText(variation, context)), style: STYLES.small },
  ]);
  const { variations } = speech.say.heads;
  return [
    headingAtom(variations, 2, width, measure, { mark: { title: variations, level: 2 } }),
    ...listAtoms(entries, width, context),
  ];
}

function gluingAtoms(context: HandoutContext, width: number): readonly Atom[] {
  const { speech, measure } = context;
  const { say } = speech;
  const parts = GLUED_FACES.map((face) => ({ title: say[face], line: gluingLine(context, face) })).filter(
    ({ line }) => line !== '',
  );
  if (parts.length === 0) return [];
  return [
    headingAtom(say.heads.gluing, 2, width, measure),
    ...parts.flatMap(({ title, line }, index) =>
      paragraphAtoms(
        parts.length > 1 ? `${title}: ${line}` : line,
        STYLES.body,
        width,
        measure,
        index === 0 ? 0 : 2 * POINT,
      ),
    ),
  ];
}

function closingAtoms(context: HandoutContext, width: number): readonly Atom[] {
  const { sketch, speech, measure } = context;
  const { heads } = speech.say;
  const notes = sketch.notes?.trim() ?? '';
  const links = sketch.links.map(({ text, address }) => [
    { text, style: STYLES.body, link: address },
    { text: address, style: STYLES.small },
  ]);
  return [
    ...(notes === ''
      ? []
      : [headingAtom(heads.notes, 2, width, measure), ...paragraphAtoms(notes, STYLES.body, width, measure)]),
    ...(links.length === 0 ? [] : [headingAtom(heads.links, 2, width, measure), ...listAtoms(links, width, context)]),
  ];
}

/**
 * The first pages: title, faces, and in two columns the sizes and words of the sketch, and what to have at hand. The
 * narrow column stands beside the front where there is no inside.
 */
export function setOpening(pager: Pager, context: HandoutContext, date: string): readonly Figure[] {
  const { frame } = context;
  const { main, side, sideX } = columnsOf(context);
  const two = context.sketch.pieces.some(({ face }) => face === 'inside');
  const { atom, figures } = faceAtoms(context, two);
  pager.set({ x: frame.left, atoms: [...titleAtoms(context, date), ...(two ? [atom] : [])] });
  pager.set(
    {
      x: frame.left,
      atoms: [
        ...(two ? [] : [atom]),
        ...sizeTable(context, main),
        ...variationAtoms(context, main),
        ...gluingAtoms(context, main),
        ...closingAtoms(context, main),
      ],
    },
    { x: sideX, atoms: suppliesStory(context, side) },
  );
  return figures;
}
