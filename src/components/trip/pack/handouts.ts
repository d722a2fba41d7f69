// What the pack's handouts are made from: the band's bundle fetched, and the stems of its sheets.
import type { SheetStem } from '../../../../shared/pack/findCode.ts';
import type { Band } from '../../../../shared/quantity/grade.ts';
import type { PackBundle } from '../../../../shared/trip/pack/bundle.ts';

/** A reader of bundles that fetches each once; what failed may work the next time. */
export function bundleReader(pattern: string): (band: Band) => Promise<PackBundle> {
  const known = new Map<Band, Promise<PackBundle>>();
  return (band) => {
    const fetched = known.get(band) ?? fetchBundle(pattern.replace('BAND', band));
    known.set(band, fetched);
    fetched.catch(() => known.delete(band));
    return fetched;
  };
}

async function fetchBundle(file: string): Promise<PackBundle> {
  const answer = await fetch(file);
  if (!answer.ok) throw new Error(`${file} answered ${answer.status}.`);
  return (await answer.json()) as PackBundle;
}

/** The sheets of a band, ready to be made for a grade and a seed. */
export function stemsIn({ source, tasks }: PackBundle, band: Band): SheetStem[] {
  return Object.entries(tasks).map(([name, kinds]) => ({ ...source, name, band, tasks: kinds }));
}
