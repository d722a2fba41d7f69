// The book that labels are made from: the desk's where there is one, else the one that the page was built with.
import { labelBook, type LabelBook } from '../../../shared/labels/labelBook.ts';
import { askBook, keepsBook } from '../book/store/deskTalk.ts';

/** Where the book comes from, and why it is not the desk's where there is one. */
export type BookFrom = 'desk' | 'built' | 'words' | 'away';

/** Asks the desk. The built book is taken where there is none, where it is silent or wants its words first. */
export async function theBook(
  base: string,
  built: LabelBook,
  signal: AbortSignal,
): Promise<{ readonly from: BookFrom; readonly book: LabelBook }> {
  const keeps = await keepsBook(signal);
  if (keeps === false) return { from: 'built', book: built };
  if (keeps === null) return { from: 'away', book: built };
  const heard = await askBook(base, signal);
  if (heard.ok) return { from: 'desk', book: labelBook(heard.said) };
  return { from: heard.why === 'words wanted' ? 'words' : 'away', book: built };
}
