// Labels in farm.yaml: measures as a ruler shows them, and what is said of those that cannot be.
import { describe, expect, it } from 'vitest';
import { reading, SOUND_FARM, told, type Files } from './farmFolder.ts';

const withLabels = (labels: string) => ({
  'farm.yaml': `${String(SOUND_FARM['farm.yaml'])}\nlabels: ${labels}\n`,
});
const farmOf = (files: Files) => {
  const read = reading(files);
  if (!read.ok) throw new Error('a sound farm was expected');
  return read.farm;
};
const SHEET = 'paper: letter, unit: in, columns: 3, rows: 10, width: 2 5/8, height: 1, left: 3/16, top: 1/2, across: 1/8'; // prettier-ignore

describe('labels in farm.yaml', () => {
  it('are read with fractions of an inch, and told as they were written', () => {
    const farm = farmOf(withLabels(`{ sheet: { ${SHEET} }, single: { unit: mm, width: 57, height: 32.5 } }`));
    // 1 in = 25.4 mm exactly (international yard and pound agreement, 1959; from memory).
    expect(farm.labels?.sheet).toEqual({
      id: 'own', paper: 'letter', columns: 3, rows: 10, width_mm: 2.625 * 25.4, height_mm: 25.4, left_mm: 0.1875 * 25.4, top_mm: 12.7,
      across_mm: 3.175, down_mm: 0, told: { unit: 'in', width: '2 5/8', height: '1' },
    }); // prettier-ignore
    expect(farm.labels?.single).toEqual({
      id: 'own-single',
      width_mm: 57,
      height_mm: 32.5,
      told: { unit: 'mm', width: '57', height: '32.5' },
    });
  });

  it('are none where nothing is said', () => {
    expect(farmOf({}).labels).toBeUndefined();
  });

  it('say what is missing, miswritten or unknown, all at once', () => {
    expect(told(withLabels('{ sheet: { paper: legal, unit: cm, columns: 0, rows: 10, width: wide, height: 1, top: 1/2, gap: 2 } }')))
      .toMatchInlineSnapshot(`
        "farm.yaml:10:11  found no labels.sheet.left; expected a length, for instance 2 5/8 or 63.5; do: add it: lay a ruler on the sheet and write the number alone; the unit has its own place
        farm.yaml:10:27  found "legal" for labels.sheet.paper; expected letter or a4; do: write one of the two
        farm.yaml:10:40  found "cm" for labels.sheet.unit; expected in or mm; do: write one of the two
        farm.yaml:10:53  found "0" for labels.sheet.columns; expected a whole number from 1 to 60; do: count the labels on the sheet
        farm.yaml:10:73  found "wide" for labels.sheet.width; expected a length, for instance 2 5/8 or 63.5; do: lay a ruler on the sheet and write the number alone; the unit has its own place
        farm.yaml:10:100  found "labels.sheet.gap", which no page reads; expected one of paper, unit, columns, rows, width, height, left, top, across, down; do: correct the word before the colon, or take the line out"
      `); // prettier-ignore
  });

  it('must lie on their paper and hold what stands on a jar', () => {
    expect(
      told(withLabels(`{ sheet: { ${SHEET.replace('columns: 3', 'columns: 4')} } }`)),
    ).toMatchInlineSnapshot(
      `"farm.yaml:10:18  found "{ paper: letter, unit: in, columns: 4, rows: 10, width: 2 5/…" for labels.sheet; expected measures with which all labels lie on the paper and each is at least 35 by 20 mm, for instance { paper: letter, unit: in, columns: 3, rows: 10, width: 2 5/8, height: 1, left: 3/16, top: 1/2, across: 1/8, down: 0 }; do: measure again: left and top are from the paper's edge to the first label, across and down what is free between two"`,
    );
    expect(told(withLabels(`{ sheet: { ${SHEET.replace('rows: 10', 'rows: 11')} } }`))).toContain(
      'farm.yaml',
    );
    expect(told(withLabels('{ single: { unit: mm, width: 30, height: 12 } }'))).toMatchInlineSnapshot(
      `"farm.yaml:10:19  found "{ unit: mm, width: 30, height: 12 }" for labels.single; expected the size of one label, at least 35 by 20 mm, for instance { unit: in, width: 2, height: 1 }; do: measure one label of the roll"`,
    );
  });
});
