import { formatLength, formatSize, type LengthStyle } from '@trimwell/geometry';
import { type BatchPlan, type HiddenCentreOffer, hiddenCentreOffers, isCentre, type Sketch } from '@trimwell/sketch';
import { labelPieces } from '../draw/labels.js';
import { BLADE_CAUTION, KNIFE_CAUTION } from './cautions.js';

/** What the sentences about centres need to know of a sketch. */
export interface CentreSpeech {
  readonly offers: readonly HiddenCentreOffer[];
  readonly style: LengthStyle;
  /** A piece as it is named in a sentence: `B The mat`. */
  readonly called: (piece: string) => string;
  readonly punched: (piece: string) => boolean;
}

/** Looks up what a sketch's centres are, once for a text. */
export function centreSpeech(sketch: Sketch): CentreSpeech {
  const labels = labelPieces(sketch);
  const piece = (id: string) => sketch.pieces.find((each) => each.id === id);
  return {
    offers: hiddenCentreOffers(sketch),
    style: { unit: sketch.unit },
    called: (id) => `${labels.get(id) ?? '?'} ${piece(id)?.name ?? id}`,
    punched: (id) => Object.values(piece(id)?.punched ?? {}).some((punch) => punch !== undefined),
  };
}

/** True when some plan of `batch` uses centres. */
export function usesCentres(batch: BatchPlan): boolean {
  return batch.papers.some(({ plan }) => plan.sheets.some(({ paper }) => isCentre(paper)));
}

/** The cautions for all blades that a batch needs, a sentence each. */
export function cautionsFor(batch: BatchPlan): readonly string[] {
  return usesCentres(batch) ? [BLADE_CAUTION, KNIFE_CAUTION] : [BLADE_CAUTION];
}

/** The knife work that `count` centres of `piece` need before they can be cut up. */
export function knifeText(piece: string, count: number, { offers, style, called, punched }: CentreSpeech): string {
  const offer = offers.find((each) => each.piece === piece);
  const many = count === 1 ? 'one of them' : `${count} of them`;
  const how = `out of ${many} with a knife, on a mat, along a metal ruler, before gluing`;
  if (!offer) return `cut the centre of ${called(piece)} ${how}`;
  const { place, coveredBy } = offer;
  const far = `${formatLength(place.x, style)} from the left edge and ${formatLength(place.y, style)} from the top`;
  const when = punched(piece) ? ', measured once it is punched' : '';
  const covers = coveredBy.map(called).join(' and ');
  return `cut the centre of ${called(piece)}, ${formatSize(offer, style)}, ${how}: ${far}${when}; it will be covered by ${covers}`;
}
