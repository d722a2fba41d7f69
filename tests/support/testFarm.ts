// A farm of plain settings, for tests that need one around a book.
import type { Farm } from '../../shared/herd/types.ts';

export const TEST_FARM: Farm = Object.freeze<Farm>({
  name: 'Test farm',
  timeZone: 'UTC',
  units: 'metric',
  recordUnit: 'L',
  languages: ['en'],
  milkings: { am: '06:30', pm: '17:30' },
  jar: { size: 2, unit: 'L' },
  largestMilking: { amount: 10, unit: 'L' },
  screen_mm: 546.1,
});
