// The pieces that proofs are put together from: entries of a span, their sums as a calculator takes them.
import { isoDate } from '../calendar/day.ts';
import type { ProofRow, ProofStep } from '../board/types.ts';
import { writtenText } from '../board/shown.ts';
import { milkingsOf, phaseOn } from '../herd/expected.ts';
import { litres, type Entry } from '../herd/ledger.ts';
import { missedMilking } from '../lactation/missedMilking.ts';
import { dateText, decimalText } from '../quantity/show.ts';
import { quotientText, sumText } from '../quantity/sumText.ts';
import { shownUnit, UNIT_ML } from '../quantity/units.ts';
import type { UnitSystem } from '../herd/types.ts';
import type { Gap, ProofInput, RowGroup } from './types.ts';

/** Entries of a span that pass a test, in order of day, doe and milking. */
export function entriesIn(
  { entriesByDay }: ProofInput,
  span: { from: number; to: number },
  keep: (entry: Entry) => boolean = () => true,
): Entry[] {
  const kept: Entry[] = [];
  for (let day = span.from; day <= span.to; day += 1) {
    for (const entry of entriesByDay.get(day) ?? []) if (keep(entry)) kept.push(entry);
  }
  return kept;
}

/** A volume of the ledger with two decimals in the farm's unit. */
export function amountText(input: ProofInput, grains: bigint): string {
  return litresText(input, litres(input.ledger, grains));
}

function inShownUnit(units: UnitSystem, amount_L: number): number {
  return (amount_L * 1000) / UNIT_ML[shownUnit(units)].valueOf();
}

/** Litres with two decimals in the farm's unit. */
export function litresText({ units, lang }: ProofInput, amount_L: number): string {
  return decimalText(inShownUnit(units, amount_L), 2, lang);
}

/** The sum of some entries, in grains. */
export function grainsOf(entries: readonly Entry[]): bigint {
  return entries.reduce((sum, entry) => sum + entry.grains, 0n);
}

/** One line `a + b + c = sum` of some entries. */
export function sumLine(input: ProofInput, label: string, entries: readonly Entry[]): ProofStep {
  return {
    label,
    sum: sumOf(
      input,
      entries.map(({ grains }) => grains),
    ),
  };
}

/** The last line: totals of the lines above, added up. */
export function totalLine(input: ProofInput, groups: readonly (readonly Entry[])[]): ProofStep {
  return { label: '', sum: sumOf(input, groups.map(grainsOf)) };
}

function sumOf({ ledger, units, lang }: ProofInput, parts: readonly bigint[]): string {
  const shown = (grains: bigint) => inShownUnit(units, litres(ledger, grains));
  return sumText(parts.map(shown), shown(parts.reduce((sum, part) => sum + part, 0n)), lang);
}

/** `total ÷ count = mean` of some grains. */
export function quotientLine({ ledger, units, lang }: ProofInput, grains: bigint, count: number): ProofStep {
  return { label: '', sum: quotientText(inShownUnit(units, litres(ledger, grains)), count, lang) };
}

/** Entries by a key, in the order in which the keys first come. */
export function groupsBy<Key>(entries: readonly Entry[], keyOf: (entry: Entry) => Key): Map<Key, Entry[]> {
  const groups = new Map<Key, Entry[]>();
  for (const entry of entries) {
    const group = groups.get(keyOf(entry));
    if (group) group.push(entry);
    else groups.set(keyOf(entry), [entry]);
  }
  return groups;
}

/** Name of a doe. */
export function nameOf({ book }: ProofInput, id: string): string {
  return book.does.find((doe) => doe.id === id)?.name ?? id;
}

/** A day in words. */
export function dayText({ lang }: ProofInput, day: number): string {
  return dateText(isoDate(day), lang, 'day');
}

/** An entry as the table of rows lists it. */
export function entryRow(input: ProofInput, { row, grains }: Entry): ProofRow {
  return {
    cells: [
      dayText(input, row.day),
      row.milking,
      nameOf(input, row.doe),
      row.amount ? writtenText(row.amount) : '',
      amountText(input, grains),
      row.use,
    ],
    place: `${row.file}:${row.line}`,
  };
}

/** Entries as groups of rows, one a day. */
export function dayGroups(input: ProofInput, entries: readonly Entry[]): RowGroup[] {
  return [...groupsBy(entries, ({ row }) => row.day)].map(([day, group]) => ({
    label: dateText(isoDate(day), input.lang),
    rows: group.map((entry) => entryRow(input, entry)),
  }));
}

/** Milkings expected in a span that have no entry, of one doe or of all. */
export function gapsIn(input: ProofInput, span: { from: number; to: number }, doe: string | null): Gap[] {
  const { book, ledger, milkings: known } = input;
  const entered = new Set(entriesIn(input, span).map(({ row }) => `${row.doe} ${row.day} ${row.milking}`));
  const does = book.does.filter(({ id }) => doe === null || id === doe);
  const gaps: Gap[] = [];
  for (let day = span.from; day <= span.to; day += 1) {
    for (const { id, name } of does) {
      for (const milking of milkingsOf(phaseOn(ledger.phases.get(id) ?? [], day))) {
        if (entered.has(`${id} ${day} ${milking}`)) continue;
        const guess = missedMilking(ledger, known.get(id) ?? new Map(), id, day, milking);
        gaps.push({
          date: isoDate(day),
          milking,
          doe: name,
          estimate: guess.ok ? estimateText(input, guess) : null,
          why: guess.ok ? null : guess.why,
        });
      }
    }
  }
  return gaps;
}

function estimateText(
  input: ProofInput,
  guess: { readonly estimate_L: number; readonly low_L: number; readonly high_L: number },
): Gap['estimate'] {
  const [middle, low, high] = [guess.estimate_L, guess.low_L, guess.high_L].map((one) =>
    litresText(input, one),
  );
  return { middle: middle ?? '', low: low ?? '', high: high ?? '' };
}
