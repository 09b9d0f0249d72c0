import type { Length } from '@trimwell/geometry';
import type { LayerHeight } from '@trimwell/geometry/regions';
import type { BatchPlan, Finding, Sketch } from '@trimwell/sketch';
import type { Assembly } from '@trimwell/sketch/assembly';

/** A card that is looked at as a whole. */
export interface AssemblySubject {
  readonly sketch: Sketch;
  /** Its plan; null while there is none. */
  readonly batch: BatchPlan | null;
  /** The country of its post (ISO 3166-1, two letters), or null for all that are known. */
  readonly post: string | null;
}

export interface AssemblyQuestion extends AssemblySubject {
  readonly number: number;
}

/** The stack of one face: its pieces from the card up, how high each lies, and the highest of them. */
export interface FaceHeights {
  readonly pieces: readonly string[];
  readonly layers: readonly LayerHeight[];
  readonly height: Length;
  readonly highest: string | null;
}

/** What is known of building the card, without the regions, which stay with the worker. */
export interface AssemblySight
  extends Omit<Assembly, 'sketch' | 'options' | 'front' | 'inside' | 'profiles' | 'batchWeight'> {
  readonly front: FaceHeights;
  readonly inside: FaceHeights;
  /** What is to be watched about single pieces. */
  readonly pieces: readonly Finding[];
  /** Grams of all cards; null when nobody knows how many. */
  readonly batchGrams: number | null;
  /** Every country whose limits are known. */
  readonly countries: readonly { readonly code: string; readonly name: string }[];
}

export type AssemblyAnswer =
  | { readonly number: number; readonly kind: 'made'; readonly sight: AssemblySight }
  | { readonly number: number; readonly kind: 'failed'; readonly message: string };

/** The end of the worker that is spoken to; a test puts its own here. */
export interface AssemblyPort {
  onmessage: ((event: { readonly data: AssemblyAnswer }) => void) | null;
  postMessage(question: AssemblyQuestion): void;
  terminate(): void;
}
