import { inches, type Length, millimetres } from '@trimwell/geometry';
import type { Punch } from './sketch.js';

/** Radii that corner rounders are usually made with: common practice, no source. */
export const USUAL_RADII: Readonly<Record<'in' | 'mm', readonly Length[]>> = {
  in: [inches(1 / 8), inches(3 / 16), inches(1 / 4), inches(3 / 8), inches(1 / 2)],
  mm: [millimetres(3), millimetres(5), millimetres(6.5), millimetres(10)],
};

/** A punch as the library offers it: which profile, what to call it, and sizes that are sensible for it. */
export type UsualPunch = Omit<Punch, 'id'>;

function usual(name: string, profile: Punch['profile'], repeat: Length, depth: Length, bite: Length): UsualPunch {
  return { name, profile, repeat, depth, bite };
}

/**
 * Border punches of generic sizes, to begin with until the user has measured their own: common practice, no source.
 * Bites are what such a punch takes off beyond the outermost point of its profile. Whole repeats of each fill an inch, or 10 or 20 mm.
 */
export const USUAL_PUNCHES: Readonly<Record<'in' | 'mm', readonly UsualPunch[]>> = {
  in: [
    usual('Scallop', 'scallop', inches(1 / 2), inches(1 / 8), inches(1 / 16)),
    usual('Small scallop', 'scallop', inches(1 / 4), inches(1 / 16), inches(1 / 16)),
    usual('Eyelet scallop', 'eyelet scallop', inches(1 / 2), inches(3 / 16), inches(1 / 16)),
    usual('Arch', 'arch', inches(1 / 2), inches(1 / 4), inches(1 / 16)),
    usual('Wave', 'wave', inches(1), inches(3 / 16), inches(1 / 16)),
    usual('Zigzag', 'zigzag', inches(1 / 4), inches(1 / 8), inches(1 / 16)),
    usual('Step', 'step', inches(1 / 2), inches(1 / 8), inches(1 / 16)),
    usual('Perforated', 'perforated', inches(1 / 8), inches(1 / 32), inches(0)),
    usual('Deckle', 'deckle', inches(2), inches(1 / 8), inches(1 / 16)),
  ],
  mm: [
    usual('Scallop', 'scallop', millimetres(10), millimetres(3), millimetres(2)),
    usual('Small scallop', 'scallop', millimetres(5), millimetres(1.5), millimetres(2)),
    usual('Eyelet scallop', 'eyelet scallop', millimetres(10), millimetres(4), millimetres(2)),
    usual('Arch', 'arch', millimetres(10), millimetres(5), millimetres(2)),
    usual('Wave', 'wave', millimetres(20), millimetres(4), millimetres(2)),
    usual('Zigzag', 'zigzag', millimetres(5), millimetres(3), millimetres(2)),
    usual('Step', 'step', millimetres(10), millimetres(3), millimetres(2)),
    usual('Perforated', 'perforated', millimetres(2.5), millimetres(0.8), millimetres(0)),
    usual('Deckle', 'deckle', millimetres(50), millimetres(3), millimetres(2)),
  ],
};

/** True when two punches leave the same edge and take off the same: only their names differ. */
export function samePunch(a: UsualPunch, b: UsualPunch): boolean {
  return a.profile === b.profile && a.repeat === b.repeat && a.depth === b.depth && a.bite === b.bite;
}
