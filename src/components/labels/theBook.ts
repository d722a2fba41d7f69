// The book that labels are made from: the desk's as this phone holds it, else the one that the page was built with.
import { labelBook, type LabelBook } from '../../../shared/labels/labelBook.ts';
import type { StoreView } from '../book/store/types.ts';

/** Where the book comes from; `words` and `silent` say why it is not the desk's, or not its newest. */
export type BookFrom = 'desk' | 'phone' | 'built' | 'words' | 'silent';

/** The book for a moment of the phone's store; null while nothing is known. What waits on this phone is in it. */
export function bookOf(
  { status, book }: StoreView,
  built: LabelBook,
): { readonly from: BookFrom; readonly book: LabelBook } | null {
  if (status === 'opening') return null;
  if (status === 'no desk') return { from: 'built', book: built };
  if (book === null) return { from: status === 'words wanted' ? 'words' : 'silent', book: built };
  return { from: status === 'online' ? 'desk' : 'phone', book: labelBook(book) };
}
