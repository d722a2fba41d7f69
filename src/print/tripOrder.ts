// The order of a trip's pack: its query read strictly, and written anew for the page that prints it.
import { packCase, tripFileName, type PackCase } from '../../shared/trip/pack/packCase.ts';
import { writePack } from '../../shared/trip/pack/packQuery.ts';
import type { PrintJob } from './jobs.ts';
import { PACK_MEDIA } from './jobs.ts';
import type { TripGround } from './tripGround.ts';

/** A pack to be printed. */
export interface TripOrder {
  readonly own: PackCase;
  readonly lang: string;
}

/** The query of a pack's page with the language of the pack beside it, parted; a language that there is not is a fault. */
export function tripOrder(
  query: URLSearchParams,
  ground: TripGround,
): { ok: true; order: TripOrder } | { ok: false; faults: string[] } {
  const fields = new URLSearchParams(query);
  const asked = fields.get('lang');
  fields.delete('lang');
  const langs = ground.tongues.map(({ lang }) => lang);
  const lang = langs.find((one) => one === (asked ?? langs[0]));
  const own = packCase(`?${fields.toString()}`, ground);
  const faults = own.aside.map((one) => `${one} cannot be printed.`);
  if (lang === undefined) faults.push(`lang=${asked} cannot be printed.`);
  if (!own.plan.ok) faults.push('This day does not work, so there is nothing to print.');
  return faults.length > 0 || lang === undefined ? { ok: false, faults } : { ok: true, order: { own, lang } };
}

/** The page and the file of an order. Only what was read goes on, written anew: no other text of it reaches the browser. */
export function tripJob({ own, lang }: TripOrder, ground: TripGround): PrintJob {
  const folder = lang === ground.tongues[0]?.lang ? '' : `${lang}/`;
  const query = writePack(own.tripQuery, own.choice, ground.shelf.paper);
  return {
    address: `${folder}trip/pack/${query}`,
    file: `${tripFileName(own.wish)}-${lang}-${own.choice.paper}.pdf`,
    media: PACK_MEDIA,
  };
}
