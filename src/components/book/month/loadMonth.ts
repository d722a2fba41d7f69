// Fetches a month: from the desk as the book stands now, else as it was when the site was built.
import type { MonthView } from '../../../../shared/book/month.ts';
import type { Source } from './month.ts';

/** A month and where it came from; null where there is none to be had. */
export type LoadedMonth = { readonly view: MonthView; readonly source: Source } | null;

/** Loads a month; `hasDesk` is whether the machine that serves this page keeps a book. */
export async function loadMonth(base: string, month: string, hasDesk: boolean): Promise<LoadedMonth> {
  if (hasDesk) {
    const said = await fetched(`${base}desk/month?month=${month}`);
    if (said.view) return { view: said.view, source: 'desk' };
    const built = await fetched(`${base}book/month/${month}.json`);
    return built.view ? { view: built.view, source: said.status === 403 ? 'words' : 'built' } : null;
  }
  const built = await fetched(`${base}book/month/${month}.json`);
  return built.view ? { view: built.view, source: 'built' } : null;
}

async function fetched(address: string): Promise<{ view: MonthView | null; status: number | null }> {
  try {
    const answer = await fetch(address, { cache: 'no-cache' });
    const isJson = answer.headers.get('Content-Type')?.includes('json') ?? false;
    return { view: answer.ok && isJson ? ((await answer.json()) as MonthView) : null, status: answer.status };
  } catch {
    return { view: null, status: null };
  }
}
