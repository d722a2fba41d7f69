// What becomes of a doe's milk until somebody says otherwise: the first choice on her pad.
import type { Use } from '../herd/types.ts';
import type { Milking } from './nextMilking.ts';
import type { BookDoe, BookRow, Treatment } from './types.ts';

/**
 * Days after a kidding on which her milk is first milk (colostrum), which is for her kids: milk for people must be
 * practically free of it. The number is common practice, no source; the farm's own rule and the inspector go first.
 */
export const FIRST_MILK_days = 4;

/**
 * Withheld under treatment; fed in the first days after a kidding, and where her last milk at the same time of day was
 * fed to kids; else kept. It is only where the choice begins.
 */
export function startingUse(
  doe: BookDoe,
  treated: Treatment | null,
  lastAtThisTime: Pick<BookRow, 'use'> | null,
  at: Milking,
): Use {
  if (treated) return 'withheld';
  const isFirstMilk = doe.spans.some(
    ({ phase, from }) => phase === 'with kids' && from <= at.day && at.day - from <= FIRST_MILK_days,
  );
  return isFirstMilk || lastAtThisTime?.use === 'fed' ? 'fed' : 'kept';
}
