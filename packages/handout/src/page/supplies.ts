import { flatCardBase, type Length } from '@trimwell/geometry';
import { realSheets } from '@trimwell/sketch';
import type { Atom, AtomGroup } from './atom.js';
import type { HandoutContext } from './context.js';
import { CORNERS } from './piece-words.js';
import { postingTexts } from './posting.js';
import { POINT } from './sheet-of-paper.js';
import { headingAtom, rowAtom, textAtom, type Words } from './text-atoms.js';
import { STYLES } from './text-style.js';
import { usesCentres } from './uses.js';

/** Entries under each other, each with a hanging dash; the first line of an entry may be followed by a grey one. */
export function listAtoms(
  entries: readonly (readonly Words[])[],
  width: number,
  context: HandoutContext,
): readonly Atom[] {
  const group: AtomGroup = { tag: 'L' };
  const indent = 8 * POINT;
  return entries.map((words, index) => {
    const link = words.find((each) => each.link !== undefined)?.link;
    return rowAtom(
      [
        { x: 0, width: indent, words: [{ text: '–', style: STYLES.body }] },
        { x: indent, width: width - indent, words },
      ],
      context.measure,
      {
        tag: 'LI',
        group,
        before: index === 0 ? 0 : 1.5 * POINT,
        // No list begins with a single entry at the foot of a page.
        stays: index === 0 && entries.length > 1,
        ...(link === undefined ? {} : { link }),
      },
    );
  });
}

function plain(texts: readonly string[]): readonly (readonly Words[])[] {
  return texts.map((text) => [{ text, style: STYLES.body }]);
}

/** The different lengths among `lengths`, from small to large, in words. */
function different(lengths: readonly Length[], { speech }: HandoutContext): readonly string[] {
  return [...new Set(lengths)].sort((a, b) => a - b).map((length) => speech.length(length));
}

/** The papers that are cut, each with the number and size of its sheets. */
function papers({ sketch, batch, speech }: HandoutContext): readonly (readonly Words[])[] {
  const { say } = speech;
  return batch.papers.flatMap(({ paper: id, plan }) => {
    const paper = sketch.papers.find((each) => each.id === id);
    if (!paper) return [];
    const count = realSheets(plan);
    const size = speech.size(paper);
    const unmade = plan.unmade.length > 0;
    const needed =
      count > 0 ? say.needed(say.sheets(count), size) : unmade ? say.noneCuttable(size) : say.notNeeded(size);
    const note = paper.directional ? `${needed}, ${say.directional}` : needed;
    return [
      [
        { text: paper.name, style: STYLES.body },
        { text: note, style: STYLES.small },
      ],
    ];
  });
}

/** What the pieces need to be worked with, as far as the sketch says it. */
export function toolTexts(context: HandoutContext): readonly string[] {
  const { sketch, batch, speech } = context;
  const { say } = speech;
  const { pieces } = sketch;
  const radii = different(
    pieces.flatMap(({ corners }) => CORNERS.map((corner) => corners[corner]).filter((radius) => radius > 0)),
    context,
  );
  const punches = sketch.punches.filter(({ id }) => pieces.some(({ punched }) => Object.values(punched).includes(id)));
  const foams = different(
    pieces.flatMap(({ raise }) => (raise > 0 ? [raise] : [])),
    context,
  );
  return [
    say.trimmer,
    ...(sketch.card.fold === 'none' ? [] : [say.scorer]),
    ...(radii.length > 0 ? [say.rounder(speech.list(radii))] : []),
    ...punches.map(({ name, repeat, depth }) => say.punch(name, speech.length(repeat), speech.length(depth))),
    ...(pieces.some(({ shape }) => shape !== 'rectangle') ? [say.scissors] : []),
    ...(usesCentres(batch) ? [say.knife] : []),
    ...(pieces.some(({ raise }) => raise === 0) ? [say.adhesive] : []),
    ...foams.map((foam) => say.foam(foam)),
  ];
}

/** The batch in short: cards and sheets, what is proven of them, and what the sheets at hand would give. */
function yieldAtoms(context: HandoutContext, width: number): readonly Atom[] {
  const { batch, most, measure, speech, sketch } = context;
  const { say } = speech;
  const name = (paper: string): string => sketch.papers.find(({ id }) => id === paper)?.name ?? paper;
  const proven = batch.fewestSheets ? say.fewest(batch.mixed) : say.atLeast(say.sheets(batch.lowerBound));
  const limited = most
    ? [
        say.mostCards(say.cards(most.cards), most.proven),
        ...(most.runsOut.length > 0 ? [say.runsOut(speech.list(most.runsOut.map(name)))] : []),
      ]
    : [];
  const notes = [batch.complete ? proven : say.incomplete, ...limited];
  const { body } = STYLES;
  return [
    headingAtom(say.heads.yield, 2, width, measure),
    textAtom(say.batch(say.cards(batch.cards), say.sheets(batch.sheets)), STYLES.strong, width, measure, {
      stays: true,
    }),
    ...notes.map((text) => textAtom(text, { ...body, role: 'note' }, width, measure, { before: 2 * POINT })),
  ];
}

/** All that has to be there before the first cut: the narrow column of the first page. */
export function suppliesStory(context: HandoutContext, width: number): readonly Atom[] {
  const { sketch, batch, measure, speech } = context;
  const { say } = speech;
  const { card } = sketch;
  const bases = say.bases(batch.cards, speech.size(flatCardBase(card)));
  const envelope = card.envelope ? [say.envelope(batch.cards, card.envelope.name, speech.size(card.envelope))] : [];
  const part = (title: string, atoms: readonly Atom[], first = false): readonly Atom[] =>
    atoms.length === 0 ? [] : [headingAtom(title, 3, width, measure, first ? { before: 2 * POINT } : {}), ...atoms];
  return [
    ...yieldAtoms(context, width),
    headingAtom(say.heads.supplies, 2, width, measure, { mark: { title: say.heads.supplies, level: 2 } }),
    ...part(
      say.heads.papers,
      listAtoms([...papers(context), ...plain([bases, ...envelope, ...postingTexts(context)])], width, context),
      true,
    ),
    ...part(say.heads.tools, listAtoms(plain(toolTexts(context)), width, context)),
    ...part(say.heads.further, listAtoms(plain(sketch.supplies.filter((text) => text.trim() !== '')), width, context)),
  ];
}
