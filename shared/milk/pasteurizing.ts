// The pasteurizing table exactly as the law prints it, in both scales, and whether a batch meets it.

/** A temperature and how long it is held. The two scales are the printed pair, not conversions of each other. */
export interface HeatRow {
  readonly at_C: number;
  readonly at_F: number;
  readonly hold_s: number;
}

/** Milk; milk that is rich (10 % fat, 18 % solids or sweetened); mix for frozen desserts. */
export type HeatedKind = 'milk' | 'rich milk' | 'frozen dessert mix';

/** Fact in content/facts for each kind. */
export const HEAT_FACTS: Readonly<Record<HeatedKind, string>> = Object.freeze({
  milk: 'pasteurizing-table',
  'rich milk': 'pasteurizing-rich',
  'frozen dessert mix': 'pasteurizing-rich',
});

const MINUTE_S = 60;
const MILK: readonly HeatRow[] = Object.freeze([
  { at_C: 63, at_F: 145, hold_s: 30 * MINUTE_S },
  { at_C: 72, at_F: 161, hold_s: 15 },
  { at_C: 89, at_F: 191, hold_s: 1 },
  { at_C: 90, at_F: 194, hold_s: 0.5 },
  { at_C: 94, at_F: 201, hold_s: 0.1 },
  { at_C: 96, at_F: 204, hold_s: 0.05 },
  { at_C: 100, at_F: 212, hold_s: 0.01 },
]);
// 138 °C for 2 s is the law's "ultra-pasteurized", which any kind may be.
const ULTRA: HeatRow = Object.freeze({ at_C: 138, at_F: 280, hold_s: 2 });

/**
 * Every pair of temperature and time that pasteurizes a kind. Source: 21 CFR 131.3 and 1240.61; the
 * Pasteurized Milk Ordinance; rich milk is 3 °C or 5 °F above each row for milk.
 */
export const HEAT_ROWS: Readonly<Record<HeatedKind, readonly HeatRow[]>> = Object.freeze({
  milk: [...MILK, ULTRA],
  'rich milk': [...MILK.map((row) => ({ ...row, at_C: row.at_C + 3, at_F: row.at_F + 5 })), ULTRA],
  'frozen dessert mix': [
    { at_C: 69, at_F: 155, hold_s: 30 * MINUTE_S },
    { at_C: 80, at_F: 175, hold_s: 25 },
    { at_C: 83, at_F: 180, hold_s: 15 },
    ULTRA,
  ],
});

/** Whether a batch met the table: the row that it met, or the row that it still needs. */
export type HeatVerdict =
  | { readonly ok: true; readonly row: HeatRow }
  | { readonly ok: false; readonly why: 'not hot enough' | 'not held long enough'; readonly needs: HeatRow };

/**
 * Whether a batch that never fell below a temperature, in one scale, for a time is pasteurized. Between
 * two rows the lower one holds: the table is never interpolated.
 */
export function isPasteurized(
  kind: HeatedKind,
  least: { readonly degrees: number; readonly scale: 'C' | 'F' },
  held_s: number,
): HeatVerdict {
  const at = (row: HeatRow) => (least.scale === 'C' ? row.at_C : row.at_F);
  const rows = HEAT_ROWS[kind];
  const [coolest] = rows;
  if (!coolest) throw new Error(`no rows for ${kind}`);
  const reached = rows.filter((row) => least.degrees >= at(row));
  // Of the rows that the heat reaches, the shortest hold is the one to meet.
  const needs = reached.reduce((a, b) => (b.hold_s < a.hold_s ? b : a), reached[0] ?? coolest);
  if (reached.length === 0) return { ok: false, why: 'not hot enough', needs };
  return held_s >= needs.hold_s
    ? { ok: true, row: needs }
    : { ok: false, why: 'not held long enough', needs };
}

/** How long a row is held, in the unit that people say: minutes from one up, else seconds. */
export function holdOf({ hold_s }: HeatRow): { amount: number; unit: 'minutes' | 'seconds' } {
  return hold_s >= MINUTE_S
    ? { amount: hold_s / MINUTE_S, unit: 'minutes' }
    : { amount: hold_s, unit: 'seconds' };
}
