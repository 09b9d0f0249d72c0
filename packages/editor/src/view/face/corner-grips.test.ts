import { G } from '@svgdotjs/svg.js';
import { inches, type Length, ticks } from '@trimwell/geometry';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../../tests/kit/sample-sketch.js';
import { CornerGrips, roundMoment } from './corner-grips.js';
import { markPlace } from './edge-marks.js';
import { faceMessages } from './face-messages.js';

const sketch = sampleSketch();
const panel = sketch.pieces.find(({ id }) => id === 'panel');
if (!panel) throw new Error('the sample has a panel');
const view = { zoom: 0.005, left: 10, top: 20 };

test('grips stand inside the corners of a rectangle with room for them, and are away otherwise', () => {
  const group = new G();
  const grips = new CornerGrips(group);
  grips.show(panel, view, false);
  expect(group.attr('display')).not.toBe('none');
  const left = 10 + panel.x * view.zoom;
  const top = 20 + panel.y * view.zoom;
  expect(grips.grips[0]?.group.attr('transform')).toBe(
    `translate(${(left + 28).toFixed(2)} ${(top + 28).toFixed(2)}) rotate(0)`,
  );
  grips.show({ ...panel, height: inches(1 / 2) }, view, false);
  expect(group.attr('display')).toBe('none');
  grips.show({ ...panel, shape: 'ellipse' }, view, false);
  expect(group.attr('display')).toBe('none');
});

test('a drag says whose radius it has come to, and rounds every corner that was as round', () => {
  const start = { sketch, piece: panel, bodies: [], at: { x: 0, y: 0 }, ticksPerPixel: 200 };
  const owned: readonly Length[] = [inches(1 / 4)];
  const pull = { x: inches(3 / 16) + 200, y: inches(3 / 16) + 200 };
  const moment = roundMoment(start, 'tl', owned, pull, { altKey: false, shiftKey: false });
  expect(moment.figure).toBe('1⁄4 in, your rounder');
  expect(moment.edits).toEqual([
    { do: 'round', piece: 'panel', corners: { tl: owned[0], tr: owned[0], br: owned[0], bl: owned[0] } },
  ]);
  const alone = roundMoment(start, 'tl', owned, pull, { altKey: false, shiftKey: true });
  expect(alone.edits).toMatchObject([{ corners: { tl: owned[0], tr: 0 } }]);
});

test('a mark stands inside its edge, beside it on a thin piece, and nowhere without room', () => {
  const middle = 10 + (panel.x + panel.width / 2) * view.zoom;
  expect(markPlace(panel, 'top', view)).toEqual({ x: middle, y: 20 + panel.y * view.zoom + 28 });
  const thin = { ...panel, height: inches(1 / 2) };
  expect(markPlace(thin, 'top', view)?.y).toBeLessThan(20 + panel.y * view.zoom);
  expect(markPlace(thin, 'left', view)).toBeNull();
});

test('rounded corners are announced, alike or one by one', () => {
  const alike = { corners: { tl: inches(1 / 4), tr: inches(1 / 4), br: inches(1 / 4), bl: inches(1 / 4) } };
  expect(faceMessages.corners(alike, 'in')).toBe('corners rounded by 1/4 inches');
  expect(faceMessages.corners({ corners: { ...alike.corners, br: ticks(0) } }, 'in')).toBe(
    'corners clockwise from top left 1/4, 1/4, square, 1/4 inches',
  );
});
