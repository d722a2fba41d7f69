// Streams of milk as wide as their shares.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { milkRoad, milkRoadBox } from '../../../shared/drawing/milkRoad.ts';

const ids = ['kept', 'withheld', 'fed', 'lost'] as const;
const shares = fc
  .array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 4, maxLength: 4 })
  .map((parts) => {
    const whole = parts.reduce((sum, part) => sum + part, 0) || 1;
    return parts.map((part) => part / whole);
  });

describe('milkRoad', () => {
  it('gives each stream its share of the spout', () => {
    fc.assert(
      fc.property(shares, (parts) => {
        const streams = milkRoad(parts.map((share, i) => ({ id: ids[i] ?? 'kept', share })));
        streams.forEach((stream, i) =>
          expect(stream.width).toBeCloseTo((parts[i] ?? 0) * milkRoadBox.spoutWidth, 9),
        );
      }),
    );
  });

  it('keeps a stream as wide below as above, measured across it', () => {
    const [stream] = milkRoad([
      { id: 'kept', share: 0.5 },
      { id: 'lost', share: 0.2 },
    ]);
    const points = stream?.outline ?? [];
    // Both sides and the tongue between them: pairs face each other from the rim down.
    const sides = (points.length - 1) / 2;
    for (let i = 0; i < sides; i += 1) {
      const [ax, ay] = points[i] ?? [0, 0];
      const [bx, by] = points[points.length - 1 - i] ?? [0, 0];
      expect(Math.hypot(ax - bx, ay - by)).toBeCloseTo(stream?.width ?? 0, 9);
    }
  });

  it('draws no stream where no milk went, and keeps its place', () => {
    const streams = milkRoad(ids.map((id) => ({ id, share: id === 'kept' ? 1 : 0 })));
    expect(streams.map((stream) => stream.outline.length > 0)).toEqual([true, false, false, false]);
    expect(streams.map((stream) => stream.foot_x)).toEqual([100, 300, 500, 700]);
  });

  it('refuses more than the whole, and less than nothing', () => {
    expect(() =>
      milkRoad([
        { id: 'kept', share: 0.8 },
        { id: 'fed', share: 0.4 },
      ]),
    ).toThrow(/together at most 1/);
    expect(() => milkRoad([{ id: 'kept', share: -0.1 }])).toThrow(/0 or more/);
  });
});
