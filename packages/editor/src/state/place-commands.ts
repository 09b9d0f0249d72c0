import { type Length, nearestStep, ticks } from '@trimwell/geometry';
import { type Edit, movedBy, type Piece, rulerStep, type Sketch } from '@trimwell/sketch';
import { type Body, holdOf, leadBody, selectedBodies } from './group.js';
import { leastSide } from './resize.js';
import type { Command, EditorState } from './state.js';

/** What of the selection is free to move. */
function freeBodies(state: EditorState): readonly Body[] {
  return selectedBodies(state).filter(({ locked }) => locked === null);
}

/**
 * How far `from` is from the mark that is `marks` marks on in that direction: from between two marks the first goes to
 * the next one. 0 for none.
 */
function toMark(from: number, marks: number, step: Length): number {
  if (marks === 0) return 0;
  const mark = marks > 0 ? Math.floor(from / step) : Math.ceil(from / step);
  return (mark + marks) * step - from;
}

/**
 * Moves what is selected by marks of the ruler, all by the same, so that they keep their places to each other. The piece
 * taken last comes to a mark, also from between two. Locked pieces stay.
 */
export function nudge(right: number, down: number): Command {
  return (state, dispatch, at = 0) => {
    const bodies = freeBodies(state);
    const lead = (leadBody(bodies, state.selection) ?? bodies[0])?.handle;
    if (!lead || (right === 0 && down === 0)) return false;
    const step = rulerStep(state.sketch.unit);
    const [x, y] = [toMark(lead.x, right, step), toMark(lead.y, down, step)];
    dispatch?.({ event: 'piece.move', edits: bodies.map(({ handle }) => movedBy(handle, x, y)), at });
    return true;
  };
}

function resized(piece: Piece, width: Length, height: Length): readonly Edit[] {
  if (width === piece.width && height === piece.height) return [];
  return [{ do: 'resize', piece: piece.id, x: piece.x, y: piece.y, width, height }];
}

/**
 * Makes what is selected wider and higher by marks of the ruler; left and top stay. A size between two marks comes to
 * one. Never below one mark, nor what a mat needs.
 */
export function grow(wider: number, higher: number): Command {
  return (state, dispatch, at = 0) => {
    const { sketch } = state;
    const step = rulerStep(sketch.unit);
    const edits = freeBodies(state).flatMap(({ handle }) => {
      const least = leastSide(sketch, handle, step);
      const side = (size: Length, marks: number): Length =>
        ticks(Math.max(Math.min(size, least), size + toMark(size, marks, step)));
      return resized(handle, side(handle.width, wider), side(handle.height, higher));
    });
    if (edits.length === 0) return false;
    dispatch?.({ event: 'piece.resize', edits, at });
    return true;
  };
}

/** What is stated of a place. */
export interface StatedPlace {
  readonly x?: Length;
  readonly y?: Length;
  readonly width?: Length;
  readonly height?: Length;
}

/**
 * Sets what is stated of every selected piece's place, to the tick. Does not apply when nothing changes or a mat would
 * hold nothing; locked pieces stay.
 */
export function resizeTo(stated: StatedPlace): Command {
  return (state, dispatch, at = 0) => {
    const { sketch } = state;
    const edits = freeBodies(state).flatMap(({ handle }): readonly Edit[] => {
      const { x = handle.x, y = handle.y, width = handle.width, height = handle.height } = stated;
      const least = leastSide(sketch, handle, ticks(1));
      if (width < least || height < least) return [];
      if (width !== handle.width || height !== handle.height)
        return [{ do: 'resize', piece: handle.id, x, y, width, height }];
      return x === handle.x && y === handle.y ? [] : [{ do: 'place', piece: handle.id, x, y }];
    });
    if (edits.length === 0) return false;
    const event = edits.some((edit) => edit.do === 'resize') ? 'piece.resize' : 'piece.move';
    dispatch?.({ event, edits, at });
    return true;
  };
}

/** The piece that a mat follows in the end; a mat has no place or tilt of its own. */
export function innermost(sketch: Sketch, piece: Piece): Piece {
  const inner = piece.mats && sketch.pieces.find((other) => other.id === piece.mats?.piece);
  return inner ? innermost(sketch, inner) : piece;
}

/** `degrees` as a tilt from -180 (not taken) to 180, to a thousandth of a degree. */
export function asTilt(degrees: number): number {
  const round = Math.round(degrees * 1000) / 1000;
  const turn = ((round % 360) + 360) % 360;
  return Math.round((turn > 180 ? turn - 360 : turn) * 1000) / 1000;
}

function tiltEach(to: (inner: Piece) => number): Command {
  return (state, dispatch, at = 0) => {
    const edits = freeBodies(state).flatMap(({ handle }): readonly Edit[] => {
      const inner = innermost(state.sketch, handle);
      const tilt = asTilt(to(inner));
      return tilt === inner.tilt ? [] : [{ do: 'tilt', piece: inner.id, tilt }];
    });
    if (edits.length === 0) return false;
    dispatch?.({ event: 'piece.tilt', edits, at });
    return true;
  };
}

/** Turns what is selected to `degrees` clockwise from upright. Tilting a mat tilts what it mats, so that it stays even. */
export function tiltTo(degrees: number): Command {
  return tiltEach(() => degrees);
}

/** Turns every selected piece by `degrees` clockwise about its own middle. */
export function tilt(degrees: number): Command {
  return tiltEach((inner) => inner.tilt + degrees);
}

/** True when `length` lies on a mark of the ruler. */
export function onMark(length: number, step: Length): boolean {
  return nearestStep(length, step) === length;
}

/** True when nothing holds `piece` in its place. */
export function isFree(sketch: Sketch, piece: Piece): boolean {
  return holdOf(sketch, piece) === null;
}
