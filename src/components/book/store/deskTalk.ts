// What a page of the Milk book asks the farm's desk, and how its answers are taken.
import type { GuardAnswer, WordsAnswer as DeskWords, WordsPost } from '../../../../shared/book/access.ts';
import type { BookEntry, BookState, EntryAnswer, EntryPost } from '../../../../shared/book/types.ts';
import type { WordsAnswer } from './types.ts';

/** The header by which the farm's own machine says that it keeps a book. Any other host has none. */
const KEEPS_BOOK = 'pailside-book';
// Barn Wi-Fi may swallow a request whole; the same entries are then sent again under the same ids.
const LONGEST_ms = 12_000;

/** What came instead of an answer. `not taken`: the desk cannot read what was sent; `not it`: something answers that is no desk. */
export type Lack = 'no answer' | 'not taken' | 'words wanted' | 'not it';

/** An answer, or why there is none. */
export type Heard<T> = { readonly ok: true; readonly said: T } | { readonly ok: false; readonly why: Lack };

/** Asks without a failed request in sight whether the machine that serves this page keeps a book; null: it is silent. */
export async function keepsBook(signal: AbortSignal): Promise<boolean | null> {
  try {
    const answer = await fetch(location.pathname, {
      method: 'HEAD',
      cache: 'no-store',
      signal: soon(signal),
    });
    // An answer that nobody reads to its end counts as a request cut off.
    await answer.text();
    return answer.headers.get(KEEPS_BOOK) === 'yes';
  } catch {
    return null;
  }
}

/** The book as it stands. */
export async function askBook(base: string, signal: AbortSignal): Promise<Heard<BookState>> {
  return ask<BookState>(`${base}desk/book`, { cache: 'no-cache', signal }, isBook);
}

/** Sends entries. What the answer does not name has to be sent again. */
export async function postEntries(
  base: string,
  entries: readonly BookEntry[],
  signal: AbortSignal,
): Promise<Heard<{ answers: readonly EntryAnswer[]; state: BookState }>> {
  const post: EntryPost = { sent_ms: Date.now(), entries };
  return ask(`${base}desk/entries`, { ...posted(post), signal }, isEntriesAnswer);
}

/** Hands in the passphrase; the desk remembers this browser by a cookie. */
export async function postWords(base: string, words: string): Promise<WordsAnswer> {
  const post: WordsPost = { words };
  try {
    const answer = await fetch(`${base}desk/words`, { ...posted(post), signal: soon() });
    const said: unknown = await answer.json();
    return isWordsAnswer(said) ? said : { ok: false, why: 'no answer' };
  } catch {
    return { ok: false, why: 'no answer' };
  }
}

/** Shows the desk a cookie that it may have to give anew before it grows too old. Nothing hangs on it today. */
export async function staysKnown(base: string): Promise<void> {
  await fetch(`${base}desk/who`, { cache: 'no-store', signal: soon() }).catch(() => undefined);
}

const posted = (body: unknown): RequestInit => ({
  method: 'POST',
  headers: { 'Content-Type': 'application/json' },
  body: JSON.stringify(body),
  cache: 'no-store',
});

/** A signal that gives up by itself; telephones of some years have no `AbortSignal.any`. */
function soon(signal?: AbortSignal | null): AbortSignal {
  const ending = new AbortController();
  const end = () => ending.abort();
  setTimeout(end, LONGEST_ms);
  if (signal?.aborted) end();
  signal?.addEventListener('abort', end, { once: true });
  return ending.signal;
}

async function ask<T>(
  address: string,
  request: RequestInit,
  fits: (said: unknown) => said is T,
): Promise<Heard<T>> {
  try {
    // A network that wants a log-in first sends everybody elsewhere.
    const answer = await fetch(address, { redirect: 'error', ...request, signal: soon(request.signal) });
    if (answer.status === 403)
      return { ok: false, why: (await isVisitor(answer)) ? 'words wanted' : 'no answer' };
    if (answer.status === 404 || answer.status === 405) return { ok: false, why: 'not it' };
    if (!answer.ok) return { ok: false, why: NOT_TAKEN.has(answer.status) ? 'not taken' : 'no answer' };
    if (!/json/.test(answer.headers.get('Content-Type') ?? '')) return { ok: false, why: 'not it' };
    const said: unknown = await answer.json();
    return fits(said) ? { ok: true, said } : { ok: false, why: 'not it' };
  } catch {
    return { ok: false, why: 'no answer' };
  }
}

const NOT_TAKEN = new Set([400, 413, 415, 422]);
const isVisitor = async (answer: Response) =>
  ((await answer.json()) as Partial<GuardAnswer>).why === 'visitor';
const isRecord = (said: unknown): said is Record<string, unknown> =>
  typeof said === 'object' && said !== null;
const isBook = (said: unknown): said is BookState =>
  isRecord(said) && ['does', 'rows', 'clashes', 'treatments'].every((name) => Array.isArray(said[name]));
const isEntriesAnswer = (said: unknown): said is { answers: EntryAnswer[]; state: BookState } =>
  isRecord(said) && Array.isArray(said['answers']) && isBook(said['state']);
const isWordsAnswer = (said: unknown): said is DeskWords =>
  isRecord(said) && (said['ok'] === true || (said['ok'] === false && typeof said['why'] === 'string'));
