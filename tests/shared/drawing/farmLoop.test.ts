// The way round as a drawing: every station on its sheet, none upon another, the ground under its own stations.
import { describe, expect, it } from 'vitest';
import { LOOP_BOX, loopArrows, loopGrounds, loopSpots } from '../../../shared/drawing/farmLoop.ts';

const counts = [1, 2, 3, 4, 5, 6, 7, 8];

describe('the way round', () => {
  it.each(counts)('of %i stations has room for each on the sheet, none upon another', (count) => {
    const { stations, taps, gate } = loopSpots(count);
    const spots = [...stations, taps, gate];
    for (const { x, y } of spots) {
      expect(x).toBeGreaterThan(45);
      expect(x).toBeLessThan(LOOP_BOX.width - 45);
      expect(y).toBeGreaterThan(45);
      expect(y).toBeLessThan(LOOP_BOX.height - 45);
    }
    for (const [index, one] of spots.entries())
      for (const other of spots.slice(index + 1))
        expect(Math.hypot(one.x - other.x, one.y - other.y)).toBeGreaterThan(60);
  });

  it('goes clockwise from the gate at the foot', () => {
    const { stations, taps, gate } = loopSpots(4);
    expect(gate.y).toBe(Math.max(...stations.map(({ y }) => y), taps.y, gate.y));
    expect(stations[0]?.x).toBeLessThan(gate.x);
    expect(taps.x).toBeGreaterThan(gate.x);
  });

  it('parts the ground where the zone changes, and only there', () => {
    expect(loopGrounds(['a', 'a', 'b', 'c', 'c']).map(({ zone }) => zone)).toEqual(['a', 'b', 'c']);
    expect(loopGrounds(['a', 'b', 'a']).map(({ zone }) => zone)).toEqual(['a', 'b', 'a']);
    expect(loopGrounds([])).toEqual([]);
  });

  it('has an arrow between any two places', () => {
    expect(loopArrows(4)).toHaveLength(6);
  });
});
