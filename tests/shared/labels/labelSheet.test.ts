// Labels on paper: none lies on another, none leaves the paper, every one has its place.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  COMMON_SHEETS,
  COMMON_SINGLES,
  LEAST_LABEL,
  labelPlaces,
  labelsASheet,
  sheetFault,
  type LabelSheet,
} from '../../../shared/labels/labelSheet.ts';
import { PAGE_MEASURES, type Paper } from '../../../shared/sheet/pageMeasures.ts';

const IN = 25.4;

/** Any sheet that its measures allow. */
const anySheet = fc
  .record({
    paper: fc.constantFrom<Paper>('letter', 'a4'),
    columns: fc.integer({ min: 1, max: 5 }),
    rows: fc.integer({ min: 1, max: 12 }),
    width_mm: fc.double({ min: 35, max: 200, noNaN: true }),
    height_mm: fc.double({ min: 20, max: 250, noNaN: true }),
    left_mm: fc.double({ min: 0, max: 20, noNaN: true }),
    top_mm: fc.double({ min: 0, max: 20, noNaN: true }),
    across_mm: fc.double({ min: 0, max: 8, noNaN: true }),
    down_mm: fc.double({ min: 0, max: 8, noNaN: true }),
  })
  .map((one): LabelSheet => ({ ...one, id: 'any', told: { unit: 'mm', width: '', height: '' } }))
  .filter((one) => sheetFault(one) === null);

describe('labelPlaces()', () => {
  it('lays labels beside each other on the paper, whatever the sheet, and gives every one a place of its own', () => {
    fc.assert(
      fc.property(
        anySheet,
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: 0, max: 40 }),
        (sheet, start, count) => {
          const places = labelPlaces(sheet, start, count);
          expect(places).toHaveLength(count);
          const page = PAGE_MEASURES[sheet.paper];
          for (const { x_mm, y_mm } of places) {
            expect(Math.min(x_mm, y_mm)).toBeGreaterThanOrEqual(0);
            // A sixteenth of an inch is told no finer than this.
            expect(x_mm + sheet.width_mm).toBeLessThanOrEqual(page.width_mm + 0.0601);
            expect(y_mm + sheet.height_mm).toBeLessThanOrEqual(page.height_mm + 0.0601);
          }
          for (const [index, one] of places.entries())
            for (const other of places.slice(index + 1)) {
              const apart_x = Math.abs(one.x_mm - other.x_mm) >= sheet.width_mm - 1e-9;
              const apart_y = Math.abs(one.y_mm - other.y_mm) >= sheet.height_mm - 1e-9;
              expect(one.page !== other.page || apart_x || apart_y).toBe(true);
            }
        },
      ),
      { numRuns: 200 },
    );
  });

  it('begins at the label that is still there, and goes on to a whole sheet', () => {
    const [sheet] = COMMON_SHEETS;
    if (!sheet) throw new Error('no sheet');
    // Three across: the 29th label is the second of the tenth row.
    const places = labelPlaces(sheet, 29, 4);
    expect(places.map(({ page, row, column }) => [page, row, column])).toEqual([
      [0, 9, 1],
      [0, 9, 2],
      [1, 0, 0],
      [1, 0, 1],
    ]);
    expect(labelPlaces(sheet, 0, 1)[0]).toMatchObject({ page: 0, row: 0, column: 0 });
    expect(labelPlaces(sheet, 999, 1)[0]).toMatchObject({ page: 0, row: 9, column: 2 });
  });
});

describe('common sheets', () => {
  // Their measures: common practice, no source.
  it.each(COMMON_SHEETS)('$id lies on its paper, in its middle', (sheet) => {
    expect(sheetFault(sheet)).toBeNull();
    const { paper, columns, rows, width_mm, height_mm, left_mm, top_mm, across_mm, down_mm } = sheet;
    const page = PAGE_MEASURES[paper];
    const right_mm = page.width_mm - left_mm - columns * width_mm - (columns - 1) * across_mm;
    const bottom_mm = page.height_mm - top_mm - rows * height_mm - (rows - 1) * down_mm;
    expect(Math.abs(right_mm - left_mm)).toBeLessThan(0.15);
    expect(Math.abs(bottom_mm - top_mm)).toBeLessThan(0.15);
    expect(labelsASheet(sheet)).toBe(rows * columns);
  });

  it('are told by the numbers that a ruler shows', () => {
    const parts: Record<string, number> = { '⅝': 5 / 8, '⅓': 1 / 3 };
    for (const { width_mm, height_mm, told } of [...COMMON_SHEETS, ...COMMON_SINGLES]) {
      const value = (text: string) => Number(text.replace(/[⅝⅓]/, '')) + (parts[text.at(-1) ?? ''] ?? 0);
      const unit_mm = told.unit === 'in' ? IN : 1;
      expect(value(told.width) * unit_mm).toBeCloseTo(width_mm, 6);
      expect(value(told.height) * unit_mm).toBeCloseTo(height_mm, 6);
    }
  });

  it('have names of their own, and none is too small for what stands on a jar', () => {
    const all = [...COMMON_SHEETS, ...COMMON_SINGLES];
    expect(new Set(all.map(({ id }) => id)).size).toBe(all.length);
    for (const { width_mm, height_mm } of all) {
      expect(width_mm).toBeGreaterThanOrEqual(LEAST_LABEL.width_mm);
      expect(height_mm).toBeGreaterThanOrEqual(LEAST_LABEL.height_mm);
    }
  });
});

describe('sheetFault()', () => {
  it('says why a sheet cannot be', () => {
    const sheet = { paper: 'letter', columns: 3, rows: 10, width_mm: 66, height_mm: 25.4, left_mm: 5, top_mm: 12, across_mm: 3, down_mm: 0 } as const; // prettier-ignore
    expect(sheetFault(sheet)).toBeNull();
    expect(sheetFault({ ...sheet, columns: 4 })).toBe('too wide');
    expect(sheetFault({ ...sheet, rows: 11 })).toBe('too high');
    expect(sheetFault({ ...sheet, width_mm: 30 })).toBe('too small');
  });
});
