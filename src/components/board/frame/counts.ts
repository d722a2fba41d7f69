// Counts how often a page is opened: one a visit, by the day and the language, kept on this machine alone.
import { addVisit, readVisits, type Visits } from '../../../../shared/board/asked/visits.ts';
import { keepText, takeText } from '../keep/box.ts';
import { FORGET } from './alone.ts';

const COUNTS = 'pailside.asked';
const TURN = 'pailside.asked-now';
// Reached late: in a browser that keeps nothing the bare name already throws.
const lasting = () => localStorage;
const passing = () => sessionStorage;

/** The date on this machine's own calendar. */
export function boardDate(now = new Date()): string {
  const two = (value: number) => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** All counts of the last thirteen months. */
export function keptVisits(today = boardDate()): Visits {
  return readVisits(takeText(lasting, COUNTS), today);
}

/** Takes all counts away. */
export function clearVisits(): void {
  keepText(lasting, COUNTS, null);
}

/**
 * Counts this page once a turn in its language, where it has a name in `data-counted`. A turn ends on the board's
 * home, tapped or by itself; what was opened in it is then forgotten.
 */
export function countVisit(page: Document): void {
  page.addEventListener(FORGET, () => keepText(passing, TURN, null));
  const { counted, boardPath } = page.body.dataset;
  if (boardPath === '/barn/') keepText(passing, TURN, null);
  if (!counted) return;
  const lang = page.documentElement.lang;
  const opened = openedInTurn();
  if (opened.includes(`${counted} ${lang}`)) return;
  keepText(passing, TURN, JSON.stringify([...opened, `${counted} ${lang}`].toSorted()));
  const today = boardDate();
  keepText(lasting, COUNTS, JSON.stringify(addVisit(keptVisits(today), today, lang, counted)));
}

function openedInTurn(): string[] {
  try {
    const kept: unknown = JSON.parse(takeText(passing, TURN) ?? '[]');
    return Array.isArray(kept) ? kept.filter((one) => typeof one === 'string') : [];
  } catch {
    return [];
  }
}
