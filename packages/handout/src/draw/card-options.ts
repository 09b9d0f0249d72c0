import type { LengthStyle } from '@trimwell/geometry';
import type { Face } from '@trimwell/sketch';

export interface CardOptions {
  readonly face: Face;
  readonly style: LengthStyle;
  /** Height of the figures, in ticks. Default 1/6 in. */
  readonly size?: number;
  /** Overall dimensions below and to the left. Default true. */
  readonly dimensions?: boolean;
  /** The pieces' letters, each in a corner of its piece. Default false. */
  readonly labels?: boolean;
  /** Leaves out the pieces that are hidden on the table. Default false: on paper every piece is drawn. */
  readonly leaveOutHidden?: boolean;
}
