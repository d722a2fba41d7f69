// What a cup or a pail holds: amounts from one table, gaps that stay gaps.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CALCIUM_NEEDS, calciumOfPail } from '../../../shared/milk/calcium.ts';
import { contentsOf, cupContents, mass_g, pailContents } from '../../../shared/milk/contents.ts';
import { MILKS, NUTRIENTS, valueIn, type MilkTable } from '../../../shared/milk/milkTable.ts';
import { moreThan, sideBySide } from '../../../shared/milk/sideBySide.ts';

const value = (per_100g: number, unit = 'g') => ({ per_100g, unit, label: 'x' });
const TABLE: MilkTable = {
  id: 't',
  name: 'Table',
  licence: 'ours',
  milks: {
    goat: { food: 'g', food_id: '1', cup_g: 244, values: { protein: value(3.5), calcium: value(100, 'mg') } },
    cow: { food: 'c', food_id: '2', cup_g: null, values: { protein: value(3), fat: value(0) } },
  },
};

describe('valueIn()', () => {
  it('has every nutrient of a milk, or says what the table lacks', () => {
    expect(valueIn(TABLE, 'goat', 'protein')).toEqual({ ok: true, ...value(3.5) });
    expect(valueIn(TABLE, 'goat', 'lactose')).toEqual({ ok: false, why: 'the table has no such value' });
    expect(valueIn(TABLE, 'sheep', 'protein')).toEqual({ ok: false, why: 'the table has no such milk' });
  });

  it('takes a printed 0 for a value', () => {
    expect(valueIn(TABLE, 'cow', 'fat')).toMatchObject({ ok: true, per_100g: 0 });
  });
});

describe('contentsOf(), cupContents(), pailContents()', () => {
  const amounts = (contents: ReturnType<typeof contentsOf>) =>
    Object.fromEntries(contents.map((one) => [one.nutrient, one.amount]));

  it('list every nutrient, null where there is no value', () => {
    const contents = contentsOf(TABLE, 'goat', 200);
    expect(contents.map(({ nutrient }) => nutrient)).toEqual([...NUTRIENTS]);
    expect(amounts(contents)).toMatchObject({ protein: 7, calcium: 200, fat: null });
  });

  it('count a cup by what the table says it weighs, and not otherwise', () => {
    expect(amounts(cupContents(TABLE, 'goat'))['calcium']).toBe(244);
    expect(cupContents(TABLE, 'cow').every((one) => one.amount === null && one.why === 'the table has no cup')).toBe(true); // prettier-ignore
    expect(cupContents(TABLE, 'sheep')[0]).toMatchObject({ why: 'the table has no such milk' });
  });

  it('make a pail of n cups hold n times a cup', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 500 }), (cups) => {
        const pail = amounts(pailContents(TABLE, cups * 236.5882365));
        expect(pail['calcium']).toBeCloseTo(cups * 244, 6);
        expect(pail['fat']).toBeNull();
      }),
    );
  });

  it('weigh a cup as asked', () => {
    expect(mass_g(236.5882365, 246)).toBe(246);
  });
});

describe('sideBySide()', () => {
  it('keeps to one table, drops what no milk has, and leaves gaps', () => {
    const { rows, table } = sideBySide(TABLE, ['goat', 'cow', 'sheep']);
    expect(table.name).toBe('Table');
    expect(rows.map(({ nutrient }) => nutrient)).toEqual(['protein', 'fat', 'calcium']);
    const [protein, fat] = rows;
    expect(protein?.cells.map((cell) => cell.amount)).toEqual([3.5, 3, null]);
    expect(fat?.cells.map((cell) => cell.amount)).toEqual([null, 0, null]);
    expect(fat?.unit).toBe('g');
  });

  it('has no cup for a milk without one', () => {
    const { rows } = sideBySide(TABLE, ['goat', 'cow'], 'cup');
    expect(rows[0]?.cells.map((cell) => cell.amount)).toEqual([8.54, null]);
  });

  it('gives a cell for every milk asked for', () => {
    for (const row of sideBySide(TABLE, MILKS).rows) expect(row.cells).toHaveLength(MILKS.length);
  });
});

describe('moreThan()', () => {
  it('compares two milks, and gives nothing where one is missing or is 0', () => {
    expect(moreThan(TABLE, 'goat', 'cow', 'protein')).toBeCloseTo(1 / 6, 12);
    expect(moreThan(TABLE, 'goat', 'cow', 'calcium')).toBeNull();
    expect(moreThan(TABLE, 'cow', 'cow', 'fat')).toBeNull();
  });
});

describe('calciumOfPail()', () => {
  it('serves children of every age from one on to eighteen, without a gap', () => {
    expect(CALCIUM_NEEDS[0]?.from_y).toBe(1);
    expect(CALCIUM_NEEDS.at(-1)?.to_y).toBe(18);
    CALCIUM_NEEDS.slice(1).forEach((need, index) => expect(need.from_y).toBe((CALCIUM_NEEDS[index]?.to_y ?? 0) + 1)); // prettier-ignore
  });

  it('says what the table lacks', () => {
    expect(calciumOfPail({ ...TABLE, milks: {} }, 1000)).toEqual({
      ok: false,
      why: 'the table has no such milk',
    });
  });

  it('gives nobody anything from an empty pail', () => {
    const served = calciumOfPail(TABLE, 0);
    expect(served.ok && served.served.map(({ children }) => children)).toEqual([0, 0, 0]);
  });
});
