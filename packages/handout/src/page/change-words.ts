import type { CardEdit, Sketch, Variation } from '@trimwell/sketch';
import type { HandoutContext } from './context.js';
import { cornersText } from './piece-words.js';

type RoundEdit = Extract<CardEdit, { readonly do: 'round' }>;

function isSquaring(edit: CardEdit): edit is RoundEdit {
  return edit.do === 'round' && Object.values(edit.corners).every((radius) => radius === 0);
}

/** Pieces, papers, mixes and punches by name, those that the variation brings along too. */
function names(sketch: Sketch, variation: Variation) {
  const { edits } = variation;
  const added = {
    pieces: edits.flatMap((edit) => (edit.do === 'add-piece' ? [edit.piece] : [])),
    papers: edits.flatMap((edit) => (edit.do === 'set-paper' ? [edit.paper] : [])),
    mixes: edits.flatMap((edit) => (edit.do === 'set-mix' ? [edit.mix] : [])),
    punches: edits.flatMap((edit) => (edit.do === 'set-punch' ? [edit.punch] : [])),
  };
  const lookUp = (records: readonly { readonly id: string; readonly name: string }[]) => (id: string) =>
    records.find((record) => record.id === id)?.name ?? id;
  return {
    piece: lookUp([...sketch.pieces, ...added.pieces]),
    source: lookUp([...sketch.papers, ...sketch.mixes, ...added.papers, ...added.mixes]),
    punch: lookUp([...sketch.punches, ...added.punches]),
  };
}

function changeText(edit: CardEdit, { speech, labels }: HandoutContext, name: ReturnType<typeof names>): string {
  const { changes, edge } = speech.say;
  // A letter names a piece of the sketch; one that the variation brings has none yet.
  const piece = (id: string): string => labels.get(id) ?? name.piece(id);
  switch (edit.do) {
    case 'describe':
      return changes.words;
    case 'unit':
      return changes.unit;
    case 'card':
      return changes.card;
    case 'batch':
      return changes.batch;
    case 'add-piece':
      return changes.add(`${edit.piece.name} ${speech.size(edit.piece)}`);
    case 'remove-piece':
      return changes.remove(piece(edit.piece));
    case 'place':
      return changes.move(piece(edit.piece));
    case 'resize':
      return changes.resize(piece(edit.piece), speech.size(edit));
    case 'tilt':
      return changes.tilt(piece(edit.piece), speech.number(edit.tilt));
    case 'round':
      return changes.round(piece(edit.piece), cornersText(edit.corners, speech));
    case 'punch':
      return edit.punch === null
        ? changes.plain(piece(edit.piece), edge[edit.edge])
        : changes.punch(piece(edit.piece), edge[edit.edge], name.punch(edit.punch));
    case 'order':
      return changes.order(piece(edit.piece));
    case 'cut-from':
      return changes.from(piece(edit.piece), name.source(edit.from));
    case 'mat':
      return edit.mats === null
        ? changes.free(piece(edit.piece))
        : changes.mat(piece(edit.piece), piece(edit.mats.piece), speech.length(edit.mats.reveal));
    case 'alter-piece':
      return changes.alter(piece(edit.piece));
    case 'set-paper':
      return changes.paper(edit.paper.name);
    case 'remove-paper':
      return changes.noPaper(name.source(edit.paper));
    case 'set-mix':
      return changes.mix(edit.mix.name);
    case 'remove-mix':
      return changes.noMix(name.source(edit.mix));
    case 'set-punch':
      return changes.punchTool(edit.punch.name);
    case 'remove-punch':
      return changes.noPunchTool(name.punch(edit.punch));
  }
}

/** What a variation changes, in a line: pieces by their letters, those that lose their corners together. */
export function variationText(variation: Variation, context: HandoutContext): string {
  const { speech, labels, sketch } = context;
  const name = names(sketch, variation);
  const square = variation.edits.filter(isSquaring).map(({ piece }) => labels.get(piece) ?? name.piece(piece));
  const others = variation.edits.filter((edit) => !isSquaring(edit)).map((edit) => changeText(edit, context, name));
  return [...(square.length > 0 ? [speech.say.changes.square(speech.list(square))] : []), ...new Set(others)].join(
    '; ',
  );
}
