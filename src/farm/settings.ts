// Reads farm.yaml and gives the farm as pages know it.
import { isMap, parseDocument, type Document } from 'yaml';
import type { Farm } from '../../shared/herd/types.ts';
import { plainBreaks } from './csv.ts';
import { farmTripOf } from './farmTrip.ts';
import type { Findings, Place } from './fault.ts';
import { aliasFault, canReadOn, noFields, settingFaults, tornFault, yamlFault } from './settingsFaults.ts';
import { SETTINGS_FILE, settingsRule, type Settings } from './settingsRule.ts';
import { readText } from './table.ts';

/** What could be read: sound fields, and of which fields it is sure what the farm says, if anything. */
export interface SettingsReading {
  readonly fields: Partial<Settings>;
  /** Whether `fields` has what the farm says of a field, or the farm truly says nothing of it. */
  readonly sure: (name: keyof Settings) => boolean;
}

/** The reading of a file that is missing, or too torn to tell what stands under which word. */
export const NO_SETTINGS: SettingsReading = { fields: {}, sure: () => false };
/** Reads and checks the settings; every fault is added with the place of the words that it is about. */
export function readSettings(dir: string, findings: Findings): SettingsReading {
  const raw = readText(dir, SETTINGS_FILE, findings);
  if (raw === null) return NO_SETTINGS;
  const text = plainBreaks(raw);
  // The parser's own line counter loses count inside a quote that is not closed.
  const placeOf = (offset: number): Place => {
    const lines = text.slice(0, offset).split('\n');
    return { line: lines.length, column: [...(lines.at(-1) ?? '')].length + 1 };
  };
  let document: Document;
  try {
    document = parseDocument(text, { prettyErrors: false, logLevel: 'error' });
  } catch (error) {
    findings.faults.push(tornFault(String(error)));
    return NO_SETTINGS;
  }
  for (const error of document.errors) findings.faults.push(yamlFault(error, document, placeOf));
  if (!canReadOn(document)) return NO_SETTINGS;
  if (!isMap(document.contents)) {
    findings.faults.push(noFields());
    return NO_SETTINGS;
  }
  const fields = plainFields(document, placeOf, findings);
  return fields ? checkedFields(fields, { document, text, placeOf }, findings) : NO_SETTINGS;
}

// A word with nothing after its colon is as good as left out.
function plainFields(
  document: Document,
  placeOf: (offset: number) => Place,
  findings: Findings,
): Record<string, unknown> | null {
  try {
    const entries = Object.entries(document.toJS() as Record<string, unknown>);
    return Object.fromEntries(entries.filter(([, value]) => value !== null && value !== undefined));
  } catch (error) {
    findings.faults.push(aliasFault(document, placeOf, String(error)));
    return null;
  }
}

function checkedFields(
  fields: Record<string, unknown>,
  source: Parameters<typeof settingFaults>[1],
  findings: Findings,
): SettingsReading {
  const read = settingsRule.safeParse(fields);
  if (read.success) return { fields: read.data, sure: () => source.document.errors.length === 0 };
  const { issues } = read.error;
  findings.faults.push(...settingFaults(issues, source));
  const sound = Object.entries(settingsRule.shape).flatMap(([name, rule]) => {
    const one = Object.hasOwn(fields, name) ? rule.safeParse(fields[name]) : null;
    return one?.success ? [[name, one.data] as const] : [];
  });
  // An unknown word may be a misspelt one: then what is missing is perhaps not missing at all.
  const misspelt = issues.some(({ code, path }) => code === 'unrecognized_keys' && path.length === 0);
  const soundNames = new Set(sound.map(([name]) => name));
  const sure = (name: string) => soundNames.has(name) || (!misspelt && !Object.hasOwn(fields, name));
  return { fields: Object.fromEntries(sound), sure };
}

/** The farm as pages know it, with the defaults of fields that a farm may leave out. */
export function farmOf(settings: Settings): Farm {
  const { name, timeZone, units, recordUnit, milkings, languages = ['en', 'es'] } = settings;
  const trip = farmTripOf(settings);
  return {
    name,
    timeZone,
    units,
    recordUnit,
    languages,
    milkings,
    jar: settings.jar ?? (units === 'us' ? { size: 1, unit: 'qt' } : { size: 1, unit: 'L' }),
    largestMilking: settings.largestMilking ?? LARGEST_MILKING,
    screen_mm: screenOf(settings.board?.screen ?? USUAL_SCREEN),
    ...(settings.labels && { labels: settings.labels }),
    ...(trip && { trip }),
  };
}

/** The barn's screen of a farm that names none: a common size for a wall. Common practice, no source. */
export const USUAL_SCREEN = Object.freeze({ diagonal: 21.5, unit: 'in' } as const);

function screenOf({ diagonal, unit }: { diagonal: number; unit: 'in' | 'cm' }): number {
  return diagonal * (unit === 'in' ? 25.4 : 10);
}

/** The largest single milking of a farm that names none. Source: the farm folder's contract. */
export const LARGEST_MILKING = Object.freeze({ amount: 10, unit: 'L' } as const);
