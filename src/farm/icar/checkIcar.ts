// Reads JSON of the ICAR animal data exchange and holds each event against its published schema.
import { readdirSync, readFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import { Ajv, type ErrorObject, type ValidateFunction } from 'ajv';
import formats from 'ajv-formats';
import type { IcarEvents, IcarTest, IcarVisit } from '../../../shared/book/icarTypes.ts';
import type { ImportFault, LeftOut, Told } from '../../../shared/book/importTypes.ts';

const SCHEMA_DIR = join(import.meta.dirname, 'schema');
const BASE = 'icar:/';
const VISIT = 'icarMilkingVisitEventResource';
const TEST = 'icarTestDayResultEventResource';

/** The events of a file, and what is wrong with those that are none. `line` of a fault is the event's place in the file. */
export interface IcarReading extends IcarEvents {
  readonly faults: readonly ImportFault[];
  readonly left: readonly LeftOut[];
}

let checks: Readonly<Record<typeof VISIT | typeof TEST, ValidateFunction>> | null = null;

/** Compiles the published schemas, once. */
function openChecks() {
  if (checks) return checks;
  const ajv = new Ajv({ strict: false, allErrors: true, validateFormats: true });
  // The package is itself the function; its types know it only as a default.
  (formats as unknown as (ajv: Ajv) => Ajv)(ajv);
  for (const folder of ['enums', 'types', 'resources'])
    for (const name of readdirSync(join(SCHEMA_DIR, folder))) {
      const schema = JSON.parse(readFileSync(join(SCHEMA_DIR, folder, name), 'utf8')) as object;
      ajv.addSchema(plainSchema(schema, folder) as object, `${BASE}${folder}/${name}`);
    }
  const checkOf = (name: string) => {
    const check = ajv.getSchema(`${BASE}resources/${name}.json`);
    if (!check) throw new Error(`There is no schema ${name} in ${SCHEMA_DIR}.`);
    return check;
  };
  return (checks = { [VISIT]: checkOf(VISIT), [TEST]: checkOf(TEST) });
}

// The schemas are those of OpenAPI 3.0: there `nullable` stands where JSON Schema lists the type null, and `discriminator`
// says nothing that has to be checked. References are written out from the root, so that no file needs an address.
function plainSchema(schema: unknown, folder: string): unknown {
  if (Array.isArray(schema)) return schema.map((one) => plainSchema(one, folder));
  if (schema === null || typeof schema !== 'object') return schema;
  const { nullable, ...rest } = schema as Record<string, unknown>;
  const plain = Object.fromEntries(
    Object.entries(rest)
      .filter(([key]) => key !== 'discriminator')
      .map(([key, value]) => [
        key,
        key === '$ref' ? `${BASE}${posix.join(folder, String(value))}` : plainSchema(value, folder),
      ]),
  );
  return nullable === true ? { anyOf: [{ type: 'null' }, plain] } : plain;
}

/** Reads one object, a list of objects, a collection with `member`, or one object a line. */
export function readIcar(text: string): IcarReading {
  const faults: ImportFault[] = [];
  const left: LeftOut[] = [];
  const visits: IcarVisit[] = [];
  const tests: IcarTest[] = [];
  eventsIn(text, faults).forEach(({ value, place }) => {
    const name = resourceOf(value);
    if (name !== VISIT && name !== TEST) {
      const told: Told = {
        key: name === null ? 'fault.icar.none' : 'left.otherEvent',
        slots: name === null ? {} : { name },
      };
      if (name === null) faults.push({ line: place, column: null, found: start(value), told });
      else left.push({ line: place, column: null, told });
      return;
    }
    const check = openChecks()[name];
    if (!check(value)) faults.push(...faultsOf(check.errors ?? [], value, place));
    else if (name === VISIT) visits.push(visitOf(value as SchemaVisit, place));
    else tests.push(testOf(value as SchemaTest, place));
  });
  return { visits, tests, faults, left };
}

interface Placed {
  readonly value: unknown;
  readonly place: number;
}

function eventsIn(text: string, faults: ImportFault[]): Placed[] {
  const whole = parsed(text);
  if (whole.ok) {
    const { value } = whole;
    const member = isRecord(value) && Array.isArray(value['member']) ? value['member'] : null;
    const list = Array.isArray(value) ? value : (member ?? [value]);
    return list.map((one: unknown, index) => ({ value: one, place: index + 1 }));
  }
  const lines = text.split(/\r\n|\n|\r/).map((line, index) => ({ line, place: index + 1 }));
  const full = lines.filter(({ line }) => line.trim() !== '');
  const read = full.map(({ line, place }) => ({ ...parsed(line), line, place }));
  // Lines of their own are meant only where some can be read as such.
  if (!read.some(({ ok }) => ok) || full.length < 2) {
    faults.push({
      line: 1,
      column: null,
      found: text.trim().slice(0, 60),
      told: { key: 'fault.icar.json', slots: { why: whole.why } },
    });
    return [];
  }
  return read.flatMap((one) => {
    if (one.ok) return [{ value: one.value, place: one.place }];
    faults.push({
      line: one.place,
      column: null,
      found: one.line.slice(0, 60),
      told: { key: 'fault.icar.json', slots: { why: one.why } },
    });
    return [];
  });
}

function parsed(text: string): { ok: true; value: unknown } | { ok: false; why: string } {
  try {
    return { ok: true, value: JSON.parse(text) };
  } catch (error) {
    return { ok: false, why: error instanceof Error ? error.message : String(error) };
  }
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The short name of an event's kind, from a name or an address that ends in it. */
function resourceOf(value: unknown): string | null {
  const type = isRecord(value) ? value['resourceType'] : null;
  if (typeof type !== 'string' || type === '') return null;
  const name =
    type
      .split(/[/#:]/)
      .at(-1)
      ?.replace(/\.json$/, '') ?? '';
  return [VISIT, TEST].find((one) => one === name || one === `${name}Resource`) ?? name;
}

const start = (value: unknown) => JSON.stringify(value)?.slice(0, 60) ?? '';

/** Each fault of an event once, with the path to what is wrong. */
function faultsOf(errors: readonly ErrorObject[], value: unknown, place: number): ImportFault[] {
  const faults = errors
    // `allOf` and the like only say that one of their parts failed, which is told by itself.
    .filter(({ keyword }) => keyword !== 'anyOf')
    .map((error) => {
      const path = error.instancePath.slice(1).replaceAll('/', '.');
      return {
        line: place,
        column: null,
        found: foundAt(value, error.instancePath),
        told: toldOf(error, path),
      };
    });
  const seen = new Set<string>();
  return faults.filter(({ told }) => {
    const key = JSON.stringify(told);
    return seen.has(key) ? false : (seen.add(key), true);
  });
}

function toldOf({ keyword, params, message }: ErrorObject, path: string): Told {
  const at = (name: string) => (path === '' ? name : `${path}.${name}`);
  const param = (name: string) => String((params as Record<string, unknown>)[name]);
  if (keyword === 'required')
    return { key: 'fault.icar.required', slots: { path: at(param('missingProperty')) } };
  if (keyword === 'enum') {
    const allowed = (params as { allowedValues: unknown[] }).allowedValues.join(', ');
    return { key: 'fault.icar.enum', slots: { path, allowed } };
  }
  if (keyword === 'format' && param('format') === 'date-time')
    return { key: 'fault.icar.time', slots: { path } };
  if (keyword === 'type') return { key: 'fault.icar.type', slots: { path, type: param('type') } };
  return { key: 'fault.icar.other', slots: { path, why: message ?? keyword } };
}

function foundAt(value: unknown, pointer: string): string {
  const found = pointer
    .split('/')
    .slice(1)
    .reduce<unknown>((at, part) => (at as Record<string, unknown> | undefined)?.[part], value);
  return (typeof found === 'string' ? found : start(found)).slice(0, 60);
}

interface SchemaEvent {
  readonly animal: { readonly id: string; readonly scheme: string };
  readonly eventDateTime?: string;
  readonly remark?: string;
  readonly meta?: { readonly isDeleted?: boolean };
}
interface SchemaWeight {
  readonly value: number;
}
interface SchemaVisit extends SchemaEvent {
  readonly milkingStartingDateTime: string;
  readonly milkingMilkWeight: SchemaWeight;
  readonly milkingComplete?: boolean;
  readonly quarterMilkings?: readonly { readonly quarterMilkingWeight?: SchemaWeight }[];
  readonly milkingRemarks?: readonly string[];
}
interface SchemaTest extends SchemaEvent {
  readonly milkWeight24Hours?: SchemaWeight;
  readonly testDayCode?: string;
  readonly milkCharacteristics?: readonly { characteristic: string; value: string; unit?: string }[];
}

function visitOf(event: SchemaVisit, place: number): IcarVisit {
  return {
    place,
    animal: { scheme: event.animal.scheme, id: event.animal.id },
    at: event.milkingStartingDateTime,
    weight_kg: event.milkingMilkWeight.value,
    parts_kg: (event.quarterMilkings ?? []).flatMap((one) => one.quarterMilkingWeight?.value ?? []),
    complete: event.milkingComplete ?? true,
    remarks: event.milkingRemarks ?? [],
    remark: event.remark ?? '',
    deleted: event.meta?.isDeleted ?? false,
  };
}

function testOf(event: SchemaTest, place: number): IcarTest {
  return {
    place,
    animal: { scheme: event.animal.scheme, id: event.animal.id },
    at: event.eventDateTime ?? null,
    code: event.testDayCode ?? null,
    weight24h_kg: event.milkWeight24Hours?.value ?? null,
    characteristics: (event.milkCharacteristics ?? []).map((one) => ({
      name: one.characteristic,
      value: one.value,
      unit: one.unit ?? null,
    })),
    deleted: event.meta?.isDeleted ?? false,
  };
}
