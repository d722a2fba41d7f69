// How the calendar's pages ask the desk for the visits on file, and hand it a change.
import type { GuardAnswer } from '../../../shared/book/access.ts';
import type { VisitAnswer, VisitPost, VisitsBook } from '../../../shared/trip/visits/deskVisits.ts';
import { keepsBook } from '../book/store/deskTalk.ts';

/**
 * What the page knows of the visits: it is asking; no desk answers here; this browser has not said the farm's words;
 * or the visits on file.
 */
export type CalendarView =
  { readonly kind: 'asking' | 'none' | 'words' } | { readonly kind: 'told'; readonly book: VisitsBook };

/** What became of a change; `silent`: nobody answered, so that nobody knows. */
export type ChangeAnswer = VisitAnswer | { readonly ok: false; readonly why: 'silent' | 'words' };

/** Asks for the visits, without a failed request where there is no desk. */
export async function askVisits(base: string, signal: AbortSignal): Promise<CalendarView> {
  if (!(await keepsBook(signal))) return { kind: 'none' };
  try {
    const answer = await fetch(`${base}desk/visits`, { cache: 'no-store', signal });
    if (answer.status === 403) return { kind: (await isVisitor(answer)) ? 'words' : 'none' };
    return answer.ok ? { kind: 'told', book: (await answer.json()) as VisitsBook } : { kind: 'none' };
  } catch {
    return { kind: 'none' };
  }
}

/** Hands the desk a change. */
export async function postVisit(base: string, post: VisitPost): Promise<ChangeAnswer> {
  try {
    const answer = await fetch(`${base}desk/visits`, {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify(post),
      cache: 'no-store',
    });
    if (answer.status === 403) return { ok: false, why: (await isVisitor(answer)) ? 'words' : 'silent' };
    return (await answer.json()) as VisitAnswer;
  } catch {
    return { ok: false, why: 'silent' };
  }
}

const isVisitor = async (answer: Response) =>
  ((await answer.json()) as Partial<GuardAnswer>).why === 'visitor';
