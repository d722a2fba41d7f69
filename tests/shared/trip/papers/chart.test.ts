// What is drawn and said of a day on paper: the chart with its lines below each other, and of a wheelchair one thing alone.
import { describe, expect, it } from 'vitest';
import { chartOf } from '../../../../shared/trip/papers/chart.ts';
import { teacherPassages } from '../../../../shared/trip/papers/teacher.ts';
import { paperCase, tongueOf } from '../../../support/tripPaperCase.ts';

describe('chartOf', () => {
  it.each([
    ['four parties', { children: 40, adults: 8 }],
    ['one', { children: 6, adults: 2, stations: ['goat-barn'] }],
  ])('lays %s one below the other, within the sheet', (_, wish) => {
    const { day } = paperCase(wish);
    const { rows, height, width, hours, left } = chartOf(day);
    expect(rows.map(({ party }) => party)).toEqual(day.parties.map((__, party) => party));
    let above = 0;
    for (const row of rows) {
      expect(row.y).toBeGreaterThanOrEqual(above);
      above = row.y + row.height;
    }
    expect(above).toBeLessThanOrEqual(height);
    // A minute is as long everywhere: the hours lie on the line of the blocks.
    const { slot, x, width: wide } = rows[0]!.blocks[0]!;
    const minute_mm = wide / (slot.to - slot.from);
    for (const hour of hours) {
      expect(hour.x).toBeCloseTo(x + (hour.at - slot.from) * minute_mm, 6);
      expect(hour.x).toBeGreaterThanOrEqual(left);
      expect(hour.x).toBeLessThanOrEqual(width);
    }
  });
});

describe('the letter on access', () => {
  const access = (wish: Parameters<typeof paperCase>[0]) => {
    const trip = paperCase(wish);
    const found = teacherPassages(trip, tongueOf('en', trip.farm)).find(({ id }) => id === 'access');
    return JSON.stringify(found);
  };
  const INDOORS = ['goat-barn', 'hay-loft', 'measuring-table'];

  it('says that a wheelchair reaches every station, or which it does not, never both', () => {
    // Of the usual stations no wheelchair reaches the pasture rail.
    expect(access({})).toContain('cannot reach <pasture-rail>');
    expect(access({})).not.toContain('Every station of this plan');
    expect(access({ stations: INDOORS, children: 20, adults: 5 })).toContain('Every station of this plan');
    expect(access({ stations: INDOORS, children: 20, adults: 5 })).not.toContain('cannot reach');
  });
});
