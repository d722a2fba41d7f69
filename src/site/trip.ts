// What the Trip plan works with: the farm's thresholds and stations, its coming year, station texts, whom to write to.
import { join } from 'node:path';
import { NO_CONTACT } from '../../shared/trip/farmTrip.ts';
import { tripSeason as seasonOf } from '../../shared/trip/yearAhead.ts';
import type { TripFarm } from '../../shared/trip/types.ts';
import { USUAL_FARM } from '../../shared/trip/usualRules.ts';
import type { StationText, TripContact, TripSeason } from '../../shared/trip/visitTypes.ts';
import { tellContentFaults } from '../content/contentFault.ts';
import { readStationFiles } from '../content/stationFile.ts';
import { openSite } from './site.ts';

/** The farm's stations and thresholds, the usual where `farm.yaml` says nothing. */
export function tripFarm(): TripFarm {
  return openSite().farm.trip?.farm ?? USUAL_FARM;
}

let season: TripSeason | null = null;

/** The herd's coming year, from the day that the book speaks from. */
export function tripSeason(): TripSeason {
  const { book, ledger, farm } = openSite();
  return (season ??= seasonOf(book, ledger, farm));
}

/** Whom a teacher writes to; empty texts where the farm has not said. */
export function tripContact(): TripContact {
  return openSite().farm.trip?.contact ?? NO_CONTACT;
}

let read: Readonly<Record<string, readonly StationText[]>> | null = null;

/** The texts of stations in a language, in the order of the farm's loop. Throws the whole list of faults. */
export function stationTexts(lang: string): readonly StationText[] {
  if (read === null) {
    const shelf = readStationFiles(join(process.cwd(), 'content', 'stations'), openSite().languages);
    if (shelf.faults.length > 0) throw new Error(tellContentFaults(shelf.faults));
    read = shelf.stations;
  }
  const texts = read[lang] ?? [];
  return tripFarm().stations.flatMap(({ id }) => texts.find((one) => one.id === id) ?? []);
}
