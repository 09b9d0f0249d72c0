import type { SketchDocument } from '@trimwell/sketch';

const plain: SketchDocument['papers'][number]['look'] = { pattern: 'plain', ground: '#f4efe2', inks: [], repeat: 1 };

/**
 * A small sound document with one of everything: a mat that follows, a mix, a punched edge, a tilt, an inside piece, a
 * variation. Each call gives a new object, for tests that spoil it.
 */
export function sampleDocument(): SketchDocument & { pieces: NonNullable<SketchDocument['pieces']> } {
  return {
    trimwell: 1,
    id: 'fern-sampler',
    title: 'Fern sampler',
    unit: 'in',
    card: { width: '4 1/4 in', height: '5 1/2 in', fold: 'left', base: 'ivory' },
    papers: [
      { id: 'ivory', name: 'Ivory card', kind: 'cardstock', width: '8 1/2 in', height: 11, look: plain },
      { id: 'moss', name: 'Moss card', kind: 'cardstock', width: 12, height: 12, look: plain },
      {
        id: 'sprig',
        name: 'Fern sprig',
        kind: 'patterned paper',
        width: 12,
        height: 12,
        directional: true,
        look: plain,
      },
      { id: 'dots', name: 'Seed dots', kind: 'patterned paper', width: 12, height: 12, look: plain },
    ],
    mixes: [{ id: 'prints', name: 'Prints', papers: ['sprig', 'dots'] }],
    punches: [
      { id: 'scallops', name: 'Small scallops', profile: 'scallop', repeat: '1/4 in', depth: '1/8 in', bite: '1/8 in' },
    ],
    pieces: [
      {
        id: 'panel-mat',
        name: 'Panel mat',
        kind: 'mat',
        x: '1/8 in',
        y: '1/8 in',
        width: '4 in',
        height: '5 1/4 in',
        from: 'moss',
        mats: { piece: 'panel', reveal: '1/8 in' },
      },
      {
        id: 'panel',
        name: 'Panel',
        kind: 'panel',
        x: '1/4 in',
        y: '1/4 in',
        width: '3 3/4 in',
        height: '5 in',
        from: 'prints',
      },
      {
        id: 'strip',
        name: 'Strip',
        kind: 'strip',
        x: '1/4 in',
        y: '3 in',
        width: '3 3/4 in',
        height: '1 in',
        from: 'prints',
        punched: { bottom: 'scallops' },
      },
      {
        id: 'greeting',
        name: 'Greeting',
        kind: 'sentiment',
        x: '1 in',
        y: '1 1/2 in',
        width: '2 1/4 in',
        height: '3/4 in',
        from: 'ivory',
        tilt: -6,
        corners: { tl: '1/8 in', tr: '1/8 in', br: '1/8 in', bl: '1/8 in' },
        raise: '1/16 in',
      },
      {
        id: 'liner',
        name: 'Liner',
        kind: 'liner',
        face: 'inside',
        x: '1/8 in',
        y: '1/8 in',
        width: '4 in',
        height: '5 1/4 in',
        from: 'ivory',
      },
    ],
    batch: { cards: 6, contrast: [['panel', 'strip']] },
    variations: [{ id: 'square', name: 'Square corners', edits: [{ do: 'round', piece: 'greeting', corners: {} }] }],
  };
}
