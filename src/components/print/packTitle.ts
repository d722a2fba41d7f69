// The title of a pack, which a browser proposes as the name of its file.
import type { PackOrder } from '../../../shared/pack/order.ts';
import { say } from '../../../shared/words/words.ts';
import type { Tongue } from './room.ts';

/** `Cups we can count, Grade 2, 24 copies, fern · Hobnail Hill`; of several sheets the first and how many more. */
export function packTitle(order: PackOrder, { words, fronts }: Tongue, farm: string, copies: number): string {
  const [first = '', ...more] = order.sheets.map((name) => fronts[name]?.title ?? name);
  const titles = more.length === 0 ? first : `${first} + ${more.length}`;
  const parts = [
    titles,
    say(words, `sheet.grade.${order.grade}`),
    say(words, 'sheet.class-key.copies', { n: copies }),
    order.word,
  ];
  return `${parts.filter((part) => part !== '').join(', ')} · ${farm}`;
}
