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
const PART = /^[a-z0-9-]+$/;

/** A query parted: what is the trip's, what is chosen, and values that make no sense. */
export interface PackReading {
  /** With its question mark, for `readTrip`. */
  readonly trip: string;
  readonly choice: PackChoice;
  readonly aside: readonly string[];
}

/** Parts the query of a pack's page. What makes no sense takes the usual and is named. */
export function readPack(query: string, usualPaper: Paper): PackReading {
  const asked = new URLSearchParams(query);
  const aside: string[] = [];
  const paperText = asked.get('paper');
  const paper = PAPERS.find((one) => one === paperText?.toLowerCase());
  if (paperText !== null && paper === undefined) aside.push(`paper=${paperText}`);
  const packText = asked.get('pack');
  const named = packText?.split('.').filter((one) => one !== '') ?? null;
  for (const one of named ?? []) if (!PART.test(one)) aside.push(`pack=${one}`);
  for (const field of PACK_FIELDS) asked.delete(field);
  return {
    // `:` may stand in a query as it is, and is easier to read so.
    trip: `?${asked.toString().replaceAll('%3A', ':')}`,
    choice: { parts: named?.filter((one) => PART.test(one)) ?? null, paper: paper ?? usualPaper },
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
