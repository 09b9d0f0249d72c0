import { formatLength, formatSize, type LengthStyle } from '@trimwell/geometry';
import { AS_MANY_AS_POSSIBLE, type BatchPlan, counted, isCentre, pieceOfBlank, type Sketch } from '@trimwell/sketch';
import type { PlanState } from './plan-state.js';

/** Every sentence of what opens by "Make it yours". */
export const DESK_WORDS = {
  cards: 'Cards',
  asMany: 'as many as my paper gives',
  tryAsMany: 'Tick “as many as my paper gives” to see how many can.',
  variations: 'Other ways to make it',
  paper: 'The paper I have',
  paperHint: 'Say what you own; the cuts follow. Leave a number empty for as many as it takes.',
  sheet: 'My sheet',
  asDesigned: (size: string) => `as designed, ${size}`,
  another: 'another size …',
  width: 'Width',
  height: 'Height',
  sheets: 'How many',
  colour: 'Colour',
  photograph: 'Photograph it',
  photographHint: 'A photograph stays on this device and goes when you leave the page.',
  photographTaken: 'Photograph taken',
  photographFailed: 'This file could not be read as a picture.',
  photographLarge: 'This picture is larger than 30 MB; take a smaller one.',
  addScrap: 'Add a scrap',
  scrap: 'Scrap',
  scrapName: 'Name',
  scrapLike: 'Looks like',
  scrapAdd: 'Add it',
  scrapRemove: (name: string) => `Take ${name} away`,
  scrapUnused: 'Nothing is cut from it yet: choose it for a piece below.',
  fromTitle: 'Which piece from which paper',
  fromUsual: (name: string) => `as designed, ${name}`,
  lengthWrong: (allowed: string) => `Not a size; ${allowed}.`,
  lengthAllowed: (style: LengthStyle) =>
    style.unit === 'mm' ? 'such as 148, or 5 7/8 in; up to 2 m' : 'such as 5 7/8, 5.875 or 148 mm; up to 2 m',
  countWrong: (text: string, least: number, most: number, mayBeEmpty: boolean) =>
    `${text === '' ? 'This' : text} is not allowed; a whole number from ${least} to ${most} is${mayBeEmpty ? ', or nothing' : ''}.`,
  guide: 'Cutting guide',
  every: 'Every card',
  steps: 'Steps',
  designer: 'From the designer',
  handOn: 'Print, save, keep',
  loading: 'One moment …',
  notLoaded: 'This part could not be loaded.',
  more: (count: number) => `Show ${count} more`,
  planning: 'Working out the cuts …',
  stillLooking: 'Still looking for fewer sheets; the steps may change.',
  stepOf: (step: number, of: number) => `Step ${step} of ${of}`,
  allDone: 'All steps are done.',
  next: 'Done, next',
  back: 'Back',
  supplies: 'You also need',
  print: 'Print my version',
  pagePaper: 'Pages',
  letter: 'Letter',
  a4: 'A4',
  handout: 'Handout (PDF)',
  pieceList: 'Piece list (CSV)',
  making: 'Making the file …',
  saved: (name: string) => `${name} is saved.`,
  makingFailed: (why: string) => `The file could not be made: ${why}`,
  noPlanYet: 'There is no plan to make it from yet.',
  link: 'Link to my version',
  copy: 'Copy',
  copied: 'Copied.',
  notCopied: 'The browser did not allow copying; the link is marked, copy it by hand.',
  linkHint: 'It holds what you chose, not your photographs.',
  forget: 'Back to the designer’s version',
  codeNotRead: 'What the link says of your version could not be read.',
  left: 'Some of your choices do not fit this sketch and were left out.',
  notKept: 'This browser does not keep your choices; the link does.',
} as const;

function proven(batch: BatchPlan, searching: boolean): string {
  if (batch.fewestSheets) return batch.mixed ? 'No even mix needs fewer.' : 'Fewer sheets can never do.';
  return searching ? 'Looking for fewer …' : `At least ${counted(batch.lowerBound, 'sheet')} are needed.`;
}

/** The result in one line, and never more than is proven. */
export function resultText({ made, searching, failure }: PlanState): string {
  if (failure !== null) return `The cuts could not be worked out here: ${failure}.`;
  if (!made) return DESK_WORDS.planning;
  const { batch, sketch } = made;
  // The number of an incomplete plan is what was wished for, and its sheets make less.
  if (!batch.complete)
    return sketch.batch.cards === AS_MANY_AS_POSSIBLE
      ? 'Not one card can be made from this paper.'
      : batch.cards === 1
        ? '1 card cannot be made from this paper.'
        : `${batch.cards} cards cannot all be made from this paper. ${DESK_WORDS.tryAsMany}`;
  return `${counted(batch.cards, 'card')} from ${counted(batch.sheets, 'sheet')}. ${proven(batch, searching)}`;
}

/** What cannot be made, piece by piece; what several papers of a mix lack is one number. */
export function unmadeTexts({ papers }: BatchPlan, sketch: Sketch): readonly string[] {
  const missing = new Map<string, { readonly name: string; readonly reason: string; quantity: number }>();
  for (const { blank, quantity, reason } of papers.flatMap(({ plan }) => plan.unmade)) {
    const id = pieceOfBlank(blank);
    const name = sketch.pieces.find((piece) => piece.id === id)?.name ?? 'Card base';
    const known = missing.get(`${id} ${reason}`);
    if (known) known.quantity += quantity;
    else missing.set(`${id} ${reason}`, { name, reason, quantity });
  }
  return [...missing.values()].map(({ name, reason, quantity }) => `Not made: ${quantity} of ${name} (${reason}).`);
}

/** What a sheet of the guide is, how many are cut alike, and how large it is. */
export function sheetCaption(
  { paper, copies, width, height }: { paper: string; copies: number; width: number; height: number },
  name: string,
  style: LengthStyle,
): string {
  const count = copies === 1 ? '1 sheet' : `${copies} sheets, cut alike`;
  return `${isCentre(paper) ? 'Cut out from under a piece: ' : ''}${name}, ${formatSize({ width, height }, style)}: ${count}`;
}

/** A length as it stands in a field. */
export function fieldText(length: number, style: LengthStyle): string {
  return formatLength(length as Parameters<typeof formatLength>[0], { ...style, bare: true }).replaceAll('⁄', '/');
}
