// The choices of an import as they come from a page: unknown JSON, of which only what makes sense is taken.
import { AMOUNT_UNITS, type AmountUnit } from '../quantity/units.ts';
import { NO_CHOICES, PLAIN_ROLES, type ImportChoices, type PlainRole, type Role } from './importTypes.ts';
import { roleDoe } from './importColumns.ts';

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const isRole = (value: unknown): value is Role =>
  typeof value === 'string' && (PLAIN_ROLES.includes(value as PlainRole) || roleDoe(value as Role) !== null);

/** Reads choices that anybody may have sent. What cannot be read counts as not chosen. */
export function readChoices(value: unknown): ImportChoices {
  if (!isRecord(value)) return NO_CHOICES;
  const { sheet, roles, dateOrder, unit, milking, does, corrections } = value;
  return {
    sheet: typeof sheet === 'string' ? sheet : null,
    roles: pairs(roles, isRole),
    dateOrder: dateOrder === 'month first' || dateOrder === 'day first' ? dateOrder : null,
    unit: AMOUNT_UNITS.includes(unit as AmountUnit) ? (unit as AmountUnit) : null,
    milking: milking === 'am' || milking === 'pm' ? milking : null,
    does: pairs(does, (one) => typeof one === 'string'),
    corrections: Array.isArray(corrections) ? corrections.filter((one) => typeof one === 'string') : [],
  };
}

function pairs<T>(value: unknown, fits: (one: unknown) => one is T): Record<string, T> {
  if (!isRecord(value)) return {};
  return Object.fromEntries(Object.entries(value).filter((pair): pair is [string, T] => fits(pair[1])));
}
