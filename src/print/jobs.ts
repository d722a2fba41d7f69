// Which page an order prints from, and what its file is called.
import { orderQuery, type PackOrder, type Shelf } from '../../shared/pack/order.ts';
import type { AskedPack } from './options.ts';

/** A page of the site and the PDF that it becomes. */
export interface PrintJob {
  /** Below the site's base path, without a slash before it: `es/print/?grade=2&…`. */
  readonly address: string;
  readonly file: string;
  /** How the page is shown until it is printed; for paper where nothing is said. */
  readonly media?: 'print' | 'screen' | undefined;
}

/** The print room shows its pages on a screen in the very fonts of paper, and lays out the fewest there. */
export const PACK_MEDIA = 'screen';

/** Where the print room makes an order, in the language of its sheets, so that the whole document is in it. */
export function packAddress(order: PackOrder, shelf: Shelf): string {
  return `${order.lang === shelf.langs[0] ? '' : `${order.lang}/`}print/${orderQuery(order)}`;
}

/** Most sheets whose names stand in the name of a file. */
const MOST_NAMED = 2;

/**
 * The name of a pack's file: whom it is for, which sheets (unless all), how many copies, the class word (unless it is the
 * week's own), language, paper, large print.
 */
export function packFile({ order, whom, all }: AskedPack, shelf: Shelf): string {
  const { sheets, copies, word, lang, paper, print } = order;
  const named = sheets.length > MOST_NAMED ? [sheets[0], 'and', String(sheets.length - 1), 'more'] : sheets;
  const parts = [
    'sheets',
    whom,
    ...(all ? [] : named),
    ...(copies === 1 ? [] : [String(copies), 'copies']),
    ...(word === shelf.word ? [] : [word]),
    lang,
    paper,
    ...(print === 'large' ? ['large'] : []),
  ];
  return `${parts.join('-')}.pdf`;
}

/** A job for each pack. */
export function packJobs(packs: readonly AskedPack[], shelf: Shelf): PrintJob[] {
  return packs.map((pack) => ({
    address: packAddress(pack.order, shelf),
    file: packFile(pack, shelf),
    media: PACK_MEDIA,
  }));
}
