// What of a pack the Print room makes: the sheets of a class set for the children of a visit.
import type { PackOrder, Shelf } from '../../pack/order.ts';
import { MOST_COPIES } from '../../sheet/mostCopies.ts';
import type { Paper } from '../../sheet/pageMeasures.ts';
import type { TripWish } from '../types.ts';
import type { PackPart } from './parts.ts';

/**
 * The order of a pack's sheets: a copy for each child, up to the largest set there is, by the visit's class word or the
 * week's own.
 */
export function handoutOrder(
  { grade, children, word }: TripWish,
  paper: Paper,
  parts: readonly PackPart[],
  shelf: Shelf,
  lang: string,
): PackOrder {
  return {
    grade,
    sheets: parts.flatMap(({ kind, of }) => (kind === 'sheet' && of !== null ? [of] : [])),
    copies: Math.min(children, MOST_COPIES),
    word: word === '' ? shelf.word : word,
    lang,
    paper,
    print: 'ordinary',
    key: 'short',
    cover: true,
  };
}
