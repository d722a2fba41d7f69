// A slip in a visit's file and the Milk book: it takes entries and tells phones nothing of it.
import { describe, expect, it } from 'vitest';
import { entryOf, keeperOver, milkFarm } from './milkFarm.ts';

const SLIP = { 'visits/2026-05-27-millpond-school.yaml': 'school: Millpond\nstate: perhaps\n' };

describe('a slip in a file of visits', () => {
  it('is no fault of the Milk book, whose phones hear neither school nor file', async () => {
    const keeper = await keeperOver(milkFarm(SLIP));
    expect(keeper.state().faults).toBeNull();
    expect(JSON.stringify(keeper.state())).not.toMatch(/millpond/i);
    expect(await keeper.enter(entryOf())).toMatchObject([{ kept: true }]);
  });

  it('leaves a fault of the book itself told', async () => {
    const keeper = await keeperOver(
      milkFarm({ ...SLIP, 'treatments.csv': 'doe,from,until,what\ncloverr,2026-05-20,,\n' }),
    );
    expect(keeper.state().faults).toContain('treatments.csv');
    expect(keeper.state().faults).not.toMatch(/millpond/i);
  });
});
