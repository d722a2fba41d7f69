// The heading of an imported sheet: where it stands, and what each of its columns holds.
import type { MilkingTime } from '../herd/types.ts';
import { headingAndUnit, milkingBeside, milkingNamed, plainWords, roleNamed } from './importWords.ts';
import type { DoeRole, ImportColumn, PlainRole, Role, SheetRow } from './importTypes.ts';

/** A doe as an import knows her. */
export interface NamedDoe {
  readonly id: string;
  readonly name: string;
}

/** The heading, and the index of the first row below it. */
export interface SheetHeading {
  readonly columns: readonly ImportColumn[];
  readonly below: number;
}

// Titles and empty lines may stand above a heading, but not many.
const LOOKED_AT = 12;
/** No farm's sheet has more columns; a damaged file may. */
export const MOST_COLUMNS = 400;

/** The doe that a text means by her id or, where only one doe has it, her name; null where it is no doe's. */
export function doeMeant(text: string, does: readonly NamedDoe[]): string | null {
  const exact = does.find(({ id }) => id === text.trim());
  if (exact) return exact.id;
  const alike = plainNames(does).get(plainWords(text)) ?? [];
  return alike.length === 1 ? (alike[0] ?? null) : null;
}

const NAMES = new WeakMap<readonly NamedDoe[], ReadonlyMap<string, readonly string[]>>();

/** Ids of the does by what they are called, in plain words; made once for a herd, since every row of a file asks. */
function plainNames(does: readonly NamedDoe[]): ReadonlyMap<string, readonly string[]> {
  const known = NAMES.get(does);
  if (known) return known;
  const names = new Map<string, string[]>();
  for (const { id, name } of does)
    for (const plain of new Set([plainWords(id), plainWords(name)]))
      if (plain !== '') names.set(plain, [...(names.get(plain) ?? []), id]);
  NAMES.set(does, names);
  return names;
}

/** A doe's role, for her amounts of one milking or of whichever another column names. */
export function doeRole(doe: string, milking: MilkingTime | 'both'): DoeRole {
  return `of ${milking} ${doe}`;
}

/** What a role says of a doe, or null where it is a plain one. */
export function roleDoe(role: Role): { doe: string; milking: MilkingTime | null } | null {
  const match = /^of (am|pm|both) ([\s\S]+)$/.exec(role);
  if (!match) return null;
  const milking = match[1] === 'both' ? null : (match[1] as MilkingTime);
  return { doe: match[2] ?? '', milking };
}

/**
 * Finds the heading within the first rows: the row that names most columns, a date among them. A second row that only
 * says a.m. and p.m. below the does' names belongs to it. Null where no row names a date and something beside it.
 */
export function findHeading(
  rows: readonly SheetRow[],
  does: readonly NamedDoe[],
  chosen: Readonly<Record<string, Role>>,
): SheetHeading | null {
  let best: { at: number; roles: number; texts: readonly string[]; below: number } | null = null;
  rows.slice(0, LOOKED_AT).forEach((row, at) => {
    const under = rows[at + 1];
    for (const { texts, below } of [
      { texts: row.cells, below: at + 1 },
      ...(under && isMilkings(under) ? [{ texts: joined(row, under), below: at + 2 }] : []),
    ]) {
      const roles = rolesOf(texts, does, chosen).map(({ role }) => role);
      const named = roles.filter((role) => role !== 'leave').length;
      if (!roles.includes('date') || named < 2) continue;
      if (best === null || named > best.roles) best = { at, roles: named, texts, below };
    }
  });
  // Where nothing names a date, a person may say which column it is: then the first row is the heading.
  const found = best as { texts: readonly string[]; below: number } | null;
  if (!found && Object.keys(chosen).length > 0 && rows[0])
    return { columns: rolesOf(rows[0].cells, does, chosen), below: 1 };
  return found && { columns: rolesOf(found.texts, does, chosen), below: found.below };
}

/** The columns of a first row in which no heading was found, for a person to name. */
export function bareColumns(rows: readonly SheetRow[], does: readonly NamedDoe[]): readonly ImportColumn[] {
  return rolesOf(rows[0]?.cells ?? [], does, {});
}

const isMilkings = ({ cells }: SheetRow) => {
  const full = cells.filter((cell) => cell.trim() !== '');
  return full.length > 1 && full.every((cell) => milkingNamed(headingAndUnit(cell).text) !== null);
};

// A doe's name over two columns stands in the first of them alone.
function joined(top: SheetRow, under: SheetRow): string[] {
  let last = '';
  return Array.from({ length: Math.max(top.cells.length, under.cells.length) }, (_, index) => {
    const [above, below] = [top.cells[index]?.trim() ?? '', under.cells[index]?.trim() ?? ''];
    if (above !== '') last = above;
    return below === '' ? above : `${last} ${below}`;
  });
}

function rolesOf(
  texts: readonly string[],
  does: readonly NamedDoe[],
  chosen: Readonly<Record<string, Role>>,
): ImportColumn[] {
  const taken = new Set<Role>(Object.values(chosen));
  return texts.slice(0, MOST_COLUMNS).map((heading, index) => {
    const { text, unit } = headingAndUnit(heading);
    const own = Object.hasOwn(chosen, String(index)) ? chosen[String(index)] : undefined;
    const role = own ?? roleOf(text, does) ?? roleOf(heading, does) ?? 'leave';
    // The first of two columns with one role holds; a person may say otherwise.
    if (own === undefined && role !== 'leave') {
      if (taken.has(role)) return { index, heading: heading.trim(), role: 'leave', unit };
      taken.add(role);
    }
    return { index, heading: heading.trim(), role, unit };
  });
}

function roleOf(text: string, does: readonly NamedDoe[]): Role | null {
  const plain: PlainRole | null = roleNamed(text);
  // A doe may be called Milk or May: her id wins over a word that only might be a heading.
  const exact = does.find(({ id }) => id === text.trim());
  if (plain && !exact) return plain;
  const doe = exact?.id ?? doeMeant(text, does);
  if (doe !== null) return doeRole(doe, 'both');
  const beside = milkingBeside(text);
  const whose = beside && doeMeant(beside.rest, does);
  return beside && whose ? doeRole(whose, beside.milking) : null;
}
