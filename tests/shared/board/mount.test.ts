// Millimetres of the glass against published sizes of pixels.
import { describe, expect, it } from 'vitest';
import { MOUNT, pxPerMm, targetPlan } from '../../../shared/board/mount.ts';

describe('pixels a millimetre', () => {
  it('are those of screens on the market', () => {
    // Dot pitch printed in data sheets of 21.5" and 24" full-HD panels: 0.248 mm and 0.277 mm (from memory).
    expect(1 / pxPerMm(1920, 1080, 21.5 * 25.4)).toBeCloseTo(0.248, 3);
    expect(1 / pxPerMm(1920, 1080, 24 * 25.4)).toBeCloseTo(0.277, 3);
  });

  it('make targets that are never below their millimetres', () => {
    for (const diagonal_mm of [256.5, 396, 546.1, 812.8])
      for (const { px_perMm, younger_px, older_px } of targetPlan(diagonal_mm)) {
        expect(younger_px / px_perMm).toBeGreaterThanOrEqual(25);
        expect(older_px / px_perMm).toBeGreaterThanOrEqual(20);
      }
  });
});

describe('the height', () => {
  it('is the same in millimetres and inches', () => {
    // 1 in is 25.4 mm: NIST SP 811. The standards print rounded pairs.
    expect(Math.abs(MOUNT.low_in * 25.4 - MOUNT.low_mm)).toBeLessThan(5);
    expect(Math.abs(MOUNT.high_in * 25.4 - MOUNT.high_mm)).toBeLessThan(5);
  });
});
