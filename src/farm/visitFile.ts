// Reads one visit's file, and changes the state of one that stands, and nothing else in it.
import { isMap, isScalar, parseDocument, type Document } from 'yaml';
import { NEEDS } from '../../shared/trip/types.ts';
import type { Visit, VisitState } from '../../shared/trip/visitTypes.ts';
import { plainBreaks } from './csv.ts';
import { faultAt, type Fault, type Place } from './fault.ts';
import { aliasFault, canReadOn, settingFaults, tornFault, yamlFault } from './settingsFaults.ts';
import { visitRule, visitWords, type VisitFields } from './visitRule.ts';

/** A visit, or all that keeps its file from being read. */
export type VisitReading = { readonly ok: true; readonly visit: Visit } | { readonly ok: false; readonly faults: readonly Fault[] }; // prettier-ignore

/** Reads a visit's text. `file` is its path in the farm folder; `stations` the farm's, null where they are not sure. */
export function readVisit(file: string, raw: string, stations: readonly string[] | null): VisitReading {
  const text = plainBreaks(raw);
  const placeOf = (offset: number): Place => {
    const lines = text.slice(0, offset).split('\n');
    return { line: lines.length, column: [...(lines.at(-1) ?? '')].length + 1 };
  };
  let document: Document;
  try {
    document = parseDocument(text, { prettyErrors: false, logLevel: 'error' });
  } catch (error) {
    return { ok: false, faults: [tornFault(String(error), file)] };
  }
  const torn = document.errors.map((error) => yamlFault(error, document, placeOf, file));
  if (!canReadOn(document)) return { ok: false, faults: torn };
  if (!isMap(document.contents)) return { ok: false, faults: torn.length > 0 ? torn : [noFields(file)] };
  const fields = plainFields(document);
  if (typeof fields === 'string')
    return { ok: false, faults: [...torn, aliasFault(document, placeOf, fields, file)] };
  // A visit that is over may name a station that the farm has given up since.
  const isOver = /^\s*(held|called off)\s*$/i.test(String(fields['state']));
  const known = isOver ? null : stations;
  const read = visitRule(known).safeParse(fields);
  if (read.success && torn.length === 0) return { ok: true, visit: visitOf(file, read.data, stations) };
  const about = { file, words: visitWords(known) };
  const slips = settingFaults(read.error?.issues ?? [], { document, text, placeOf, about });
  return { ok: false, faults: [...torn, ...slips] };
}

// A word with nothing after its colon is as good as left out.
function plainFields(document: Document): Record<string, unknown> | string {
  try {
    const entries = Object.entries(document.toJS() as Record<string, unknown>);
    return Object.fromEntries(entries.filter(([, value]) => value !== null && value !== undefined));
  } catch (error) {
    return String(error);
  }
}

function noFields(file: string): Fault {
  return faultAt(
    file,
    { line: 1, column: 1 },
    {
      found: 'no lines of the form "word: what it is"',
      expected: "a visit's school, state, date, grade, children, adults, arrive and leave",
      todo: 'write them, one a line, or take the file away',
    },
  );
}

function visitOf(file: string, fields: VisitFields, stations: readonly string[] | null): Visit {
  const { school, state, date, grade, children, adults, arrive, leave } = fields;
  const { buses = 0, lunch = null, needs = [], rain = false, word = '', note = '' } = fields;
  const named = [...new Set(fields.stations ?? [])];
  return {
    file,
    school,
    state,
    wish: {
      date,
      grade,
      children,
      adults,
      arrive,
      leave,
      buses,
      lunch,
      stations: stations === null ? named : stations.filter((id) => named.includes(id)),
      needs: NEEDS.filter((need) => needs.includes(need)),
      rain,
      word,
    },
    note,
  };
}

/** The text with another state; every other sign of it stays. Null where no state stands in it that could be changed. */
export function withState(text: string, state: VisitState): string | null {
  const document = parseDocument(text, { prettyErrors: false, logLevel: 'error' });
  if (document.errors.length > 0 || !isMap(document.contents)) return null;
  const node = document.contents.get('state', true);
  if (!isScalar(node) || !node.range) return null;
  const [from, to] = node.range;
  return `${text.slice(0, from)}${state}${text.slice(to)}`;
}
