// The published tables of what milk holds, as content/facts lays them out.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse as parseCsv } from 'csv-parse/sync';
import { parse } from 'yaml';
import * as z from 'zod';
import {
  MILKS,
  NUTRIENTS,
  type MilkName,
  type MilkTable,
  type NutrientName,
  type TableMilk,
} from '../../shared/milk/milkTable.ts';
import { FACTS_DIR } from './facts.ts';

const TABLES_FILE = 'milk-tables.yaml';
const text = z.string().min(1);
const tableShape = z.strictObject({
  name: text,
  file: text,
  licence: text,
  sure: z.enum(['seen', 'memory']),
  foods: z.partialRecord(z.enum(MILKS), text),
  cup_g: z.partialRecord(z.enum(MILKS), z.number().positive()).optional(),
  nutrients: z.partialRecord(z.enum(NUTRIENTS), text),
});
const rowShape = z.object({ food_id: z.string(), food: text, nutrient: text, unit: text, per_100g: text });
type Row = z.infer<typeof rowShape>;

let tables: ReadonlyMap<string, MilkTable> | null = null;

/** Every table by its id, the main one first. Throws where a named milk is not in its file. */
export function milkTables(): ReadonlyMap<string, MilkTable> {
  if (tables) return tables;
  const written: unknown = parse(readFileSync(join(FACTS_DIR, TABLES_FILE), 'utf8'));
  const shapes = z.record(z.string(), tableShape).parse(written);
  return (tables = new Map(Object.entries(shapes).map(([id, shape]) => [id, tableOf(id, shape)])));
}

/** The table that pages compute from unless they name another: USDA. */
export function mainMilkTable(): MilkTable {
  const [first] = milkTables().values();
  if (!first) throw new Error(`content/facts/${TABLES_FILE} names no table.`);
  return first;
}

function tableOf(id: string, shape: z.infer<typeof tableShape>): MilkTable {
  const csv = readFileSync(join(FACTS_DIR, shape.file), 'utf8');
  const rows = z.array(rowShape).parse(parseCsv(csv, { columns: true }));
  const milks: Partial<Record<MilkName, TableMilk>> = {};
  for (const [milk, food] of Object.entries(shape.foods) as [MilkName, string][]) {
    const own = rows.filter((row) => row.food === food);
    const [first] = own;
    if (!first) throw new Error(`content/facts/${shape.file} has no food "${food}".`);
    const cup_g = shape.cup_g?.[milk] ?? null;
    milks[milk] = { food, food_id: first.food_id, cup_g, values: valuesOf(own, shape.nutrients, shape.file) };
  }
  return { id, name: shape.name, licence: shape.licence, milks };
}

function valuesOf(
  rows: readonly Row[],
  names: Partial<Record<NutrientName, string>>,
  file: string,
): TableMilk['values'] {
  const pairs = (Object.entries(names) as [NutrientName, string][]).flatMap(([nutrient, label]) => {
    const found = rows.filter((row) => row.nutrient === label);
    const [row] = found;
    if (!row) return [];
    const per_100g = Number(row.per_100g);
    if (found.length > 1 || !Number.isFinite(per_100g))
      throw new Error(`content/facts/${file}: "${row.food}", "${label}" must stand once, with a number.`);
    return [[nutrient, { per_100g, unit: row.unit, label }] as const];
  });
  return Object.fromEntries(pairs);
}
