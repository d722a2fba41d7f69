// Which stations a farm has, as far as that is sure.
import { USUAL_STATIONS } from '../../shared/trip/usualRules.ts';
import { readSettings, type SettingsReading } from './settings.ts';

/** The ids of the farm's stations, in the order of its loop; null where its settings do not let anybody be sure. */
export function stationsOf({ fields, sure }: SettingsReading): readonly string[] | null {
  if (!sure('stations')) return null;
  return (fields.stations?.stations ?? USUAL_STATIONS).map(({ id }) => id);
}

/** The same of a farm folder, as its settings stand now. */
export function farmStations(dir: string): readonly string[] | null {
  return stationsOf(readSettings(dir, { faults: [], notices: [] }));
}
