// The shape of `labels` in farm.yaml: a sheet of labels and a single label by their own measures.
import * as z from 'zod';
import { readNumber } from '../../shared/quantity/amount.ts';
import type { FarmLabels } from '../../shared/herd/types.ts';
import { LEAST_LABEL, sheetFault, type LabelSheet } from '../../shared/labels/labelSheet.ts';
import type { FieldWords } from './settingsRule.ts';

const INCH_MM = 25.4;
// No label is longer than this, and no sheet has more rows or columns.
const LONGEST_MM = 420;
const MOST_LINES = 60;

// A ruler in inches is read in fractions: 2 5/8 is as good as 2.625.
const length = z.union([z.number(), z.string()]).transform((written, context) => {
  const read = readNumber(String(written));
  if (read.ok) return { told: String(written).trim(), value: read.num / read.den };
  context.issues.push({ code: 'custom', input: written, message: 'no length' });
  return z.NEVER;
});
const side = length.refine(({ value }) => value > 0);
const unit = z
  .string()
  .toLowerCase()
  .pipe(z.enum(['in', 'mm']));
const count = z.number().int().min(1).max(MOST_LINES);

const sheet = z
  .strictObject({
    paper: z
      .string()
      .toLowerCase()
      .pipe(z.enum(['letter', 'a4'])),
    unit,
    columns: count,
    rows: count,
    width: side,
    height: side,
    left: length,
    top: length,
    across: length.optional(),
    down: length.optional(),
  })
  .transform(({ paper, unit: told, columns, rows, ...sides }): LabelSheet => {
    const mm = (one: { value: number } | undefined) => (one?.value ?? 0) * (told === 'in' ? INCH_MM : 1);
    return {
      id: 'own',
      paper,
      columns,
      rows,
      width_mm: mm(sides.width),
      height_mm: mm(sides.height),
      left_mm: mm(sides.left),
      top_mm: mm(sides.top),
      across_mm: mm(sides.across),
      down_mm: mm(sides.down),
      told: { unit: told, width: sides.width.told, height: sides.height.told },
    };
  })
  .refine((one) => sheetFault(one) === null);

const single = z
  .strictObject({ unit, width: side, height: side })
  .transform(({ unit: told, width, height }) => ({
    id: 'own-single',
    width_mm: width.value * (told === 'in' ? INCH_MM : 1),
    height_mm: height.value * (told === 'in' ? INCH_MM : 1),
    told: { unit: told, width: width.told, height: height.told },
  }))
  .refine(
    ({ width_mm, height_mm }) =>
      width_mm >= LEAST_LABEL.width_mm && height_mm >= LEAST_LABEL.height_mm && width_mm <= LONGEST_MM && height_mm <= LONGEST_MM, // prettier-ignore
  );

/** What farm.yaml may say about labels. */
export const labelsRule = z
  .strictObject({ sheet: sheet.optional(), single: single.optional() })
  .transform((labels): FarmLabels => ({ sheet: labels.sheet ?? null, single: labels.single ?? null }));

const SHEET = '{ paper: letter, unit: in, columns: 3, rows: 10, width: 2 5/8, height: 1, left: 3/16, top: 1/2, across: 1/8, down: 0 }'; // prettier-ignore
const LEAST = `${LEAST_LABEL.width_mm} by ${LEAST_LABEL.height_mm} mm`;
const measured: FieldWords = {
  expected: 'a length, for instance 2 5/8 or 63.5',
  todo: 'lay a ruler on the sheet and write the number alone; the unit has its own place',
};
const counted: FieldWords = {
  expected: `a whole number from 1 to ${MOST_LINES}`,
  todo: 'count the labels on the sheet',
};
const unitWords: FieldWords = {
  expected: 'in or mm',
  todo: 'write one of the two',
  names: () => ['in', 'mm'],
};

/** The words for each of its fields. */
export const LABEL_WORDS: Readonly<Record<string, FieldWords>> = {
  labels: {
    expected: `a sheet, a single label or both, for instance { sheet: ${SHEET} }`,
    todo: 'write their measures, or take the line out: the pages then offer common ones',
  },
  'labels.sheet': {
    expected: `measures with which all labels lie on the paper and each is at least ${LEAST}, for instance ${SHEET}`,
    todo: "measure again: left and top are from the paper's edge to the first label, across and down what is free between two",
  },
  'labels.sheet.paper': {
    expected: 'letter or a4',
    todo: 'write one of the two',
    names: () => ['letter', 'a4'],
  },
  'labels.sheet.unit': unitWords,
  'labels.sheet.columns': counted,
  'labels.sheet.rows': counted,
  'labels.sheet.width': measured,
  'labels.sheet.height': measured,
  'labels.sheet.left': measured,
  'labels.sheet.top': measured,
  'labels.sheet.across': measured,
  'labels.sheet.down': measured,
  'labels.single': {
    expected: `the size of one label, at least ${LEAST}, for instance { unit: in, width: 2, height: 1 }`,
    todo: 'measure one label of the roll',
  },
  'labels.single.unit': unitWords,
  'labels.single.width': measured,
  'labels.single.height': measured,
};
