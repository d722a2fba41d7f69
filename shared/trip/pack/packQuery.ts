// The address of a pack: the trip's own query, and behind it what is in the pack and on which paper.
import { PAPERS, type Paper } from '../../sheet/pageMeasures.ts';

/** What is chosen besides the trip. */
export interface PackChoice {
  /** Names of parts; null for what is usual. */
  readonly parts: readonly string[] | null;
  readonly paper: Paper;
}

/** Fields that a pack's address has besides those of the trip. */
export const PACK_FIELDS = Object.freeze(['pack', 'paper'] as const);

/** A query parted: what is the trip's, what is chosen, and values that make no sense. */
export interface PackReading {
  /** With its question mark, for `readTrip`. */
  readonly trip: string;
  readonly choice: PackChoice;
  readonly aside: readonly string[];
}

/** Parts the query of a pack's page. What makes no sense takes the usual and is named; `isPart` knows the names of parts. */
export function readPack(query: string, usualPaper: Paper, isPart: (name: string) => boolean): PackReading {
  const asked = new URLSearchParams(query);
  const aside: string[] = [];
  const paperText = asked.get('paper');
  const paper = PAPERS.find((one) => one === paperText?.toLowerCase());
  if (paperText !== null && paper === undefined) aside.push(`paper=${paperText}`);
  const packText = asked.get('pack');
  const named = packText?.split('.').filter((one) => one !== '') ?? null;
  const known = named?.filter(isPart) ?? null;
  for (const one of named ?? []) if (!isPart(one)) aside.push(`pack=${one}`);
  for (const field of PACK_FIELDS) asked.delete(field);
  return {
    // `:` may stand in a query as it is, and is easier to read so.
    trip: `?${asked.toString().replaceAll('%3A', ':')}`,
    // Where no name is one of ours, nobody has chosen anything that there is.
    choice: { parts: named?.length !== 0 && known?.length === 0 ? null : known, paper: paper ?? usualPaper },
    aside,
  };
}

/** The query of a pack behind that of its trip; `readPack` gives the same choice again. */
export function writePack(trip: string, { parts, paper }: PackChoice, usualPaper: Paper): string {
  const own = [
    ...(parts === null ? [] : [`pack=${parts.join('.')}`]),
    ...(paper === usualPaper ? [] : [`paper=${paper}`]),
  ];
  const whole = [trip.replace(/^\?/, ''), ...own].filter((one) => one !== '');
  return whole.length > 0 ? `?${whole.join('&')}` : '';
}
