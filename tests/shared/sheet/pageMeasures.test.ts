// Sizes of a sheet by grade and print, against the tables they were taken from.
import { describe, expect, it } from 'vitest';
import { textWidth_em } from '../../../shared/sheet/lines.ts';
import { liveHeight_mm, measuresFor, mmOfPt, PAGE_MEASURES, PAPERS, setCloser, SETTINGS, textWidth_mm } from '../../../shared/sheet/pageMeasures.ts'; // prettier-ignore
import { GRADES_OF, type Grade } from '../../../shared/tasks/standards.ts';

const INCH_mm = 25.4;
const GRADES = Object.values(GRADES_OF).flat();
// x-height of Andika over its type size, read from the font.
const X_HEIGHT = 0.498;

describe('measuresFor', () => {
  it('rules lines as primary, wide and college paper is ruled', () => {
    // 1, 5/8, 1/2, 3/8, 11/32 and 9/32 inch: US stationery practice, from memory.
    const inches: Record<number, number> = { 0: 1, 1: 5 / 8, 2: 1 / 2, 3: 3 / 8, 5: 3 / 8, 6: 11 / 32, 8: 11 / 32, 9: 9 / 32, 12: 9 / 32 }; // prettier-ignore
    for (const [grade, inch] of Object.entries(inches))
      expect(Math.abs(measuresFor(Number(grade) as Grade, 'ordinary').rule_mm - inch * INCH_mm)).toBeLessThan(
        0.5,
      );
  });

  it('sets the youngest in letters that they read well', () => {
    // Wilkins and others (2009) tried x-heights of 4.2 and 5.0 mm with children of 7 to 9.
    for (const grade of [0, 1] as const)
      expect(mmOfPt(measuresFor(grade, 'ordinary').body_pt) * X_HEIGHT).toBeCloseTo(4.2, 1);
  });

  it('never grows with the grade', () => {
    GRADES.slice(1).forEach((grade, index) => {
      const [younger, older] = [
        measuresFor(GRADES[index] as Grade, 'ordinary'),
        measuresFor(grade, 'ordinary'),
      ];
      for (const name of ['body_pt', 'line', 'box_mm', 'rule_mm', 'cell_mm'] as const)
        expect(older[name]).toBeLessThanOrEqual(younger[name]);
      expect(older.longest).toBeGreaterThanOrEqual(younger.longest);
    });
  });

  it('leaves half a row free between rows where children learn to write, and in large print', () => {
    for (const grade of GRADES) {
      const { rule_mm, skip_mm } = measuresFor(grade, 'ordinary');
      expect(skip_mm).toBe(grade <= 2 ? rule_mm / 2 : 0);
      expect(measuresFor(grade, 'large').skip_mm).toBe(measuresFor(grade, 'large').rule_mm / 2);
    }
  });

  it('keeps large print to its guidelines, however close a sheet is set', () => {
    for (const grade of GRADES) {
      const [plain, large] = [measuresFor(grade, 'ordinary'), measuresFor(grade, 'large')];
      expect(large.body_pt).toBeGreaterThanOrEqual(20);
      // At least 1.15 by the guidelines of the American Council of the Blind (2022).
      expect(large.line).toBeGreaterThanOrEqual(1.3);
      expect(large.box_mm).toBeCloseTo(plain.box_mm * 1.25, 9);
      expect(large.rule_mm).toBeGreaterThanOrEqual(13);
      expect(large.cell_mm).toBe(12);
      // 18 points is what both guidelines call large print.
      for (const setting of SETTINGS)
        expect(setCloser(large, setting).body_pt).toBeGreaterThanOrEqual(18 - 1e-9);
    }
  });

  it('holds running text to the longest line of the grade', () => {
    const sentence = 'The whole herd gave this milk on Tuesday morning, and one jar holds eight cups of it.';
    for (const grade of GRADES) {
      const m = measuresFor(grade, 'ordinary');
      const letters = textWidth_mm(m) / ((textWidth_em(sentence) / sentence.length) * mmOfPt(m.body_pt));
      // Common practice, no source: a line of a grade's letters, give or take a short word.
      expect(Math.abs(letters - m.longest)).toBeLessThan(m.longest * 0.06);
    }
  });
});

describe('pages', () => {
  it('keep everything 10 mm from the edge of the paper', () => {
    for (const paper of PAPERS) {
      const { top_mm, bottom_mm, side_mm, height_mm } = PAGE_MEASURES[paper];
      expect(Math.min(top_mm, bottom_mm, side_mm)).toBeGreaterThanOrEqual(10);
      expect(liveHeight_mm(paper)).toBeLessThan(height_mm - top_mm - bottom_mm);
    }
  });
});
