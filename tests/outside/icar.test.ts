// ICAR animal data exchange: our reader against the published schemas, with examples made from the schemas themselves.
//
// Source: icarMilkingVisitEventResource, icarTestDayResultEventResource and what they refer to, ICAR ADE working group,
// Apache-2.0; the files and their licence lie in src/farm/icar/schema.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readIcar } from '../../src/farm/icar/checkIcar.ts';
import { NOT_HERE, openData } from '../support/handouts.ts';

const DIR = join('src', 'farm', 'icar', 'schema');
const VISIT = 'resources/icarMilkingVisitEventResource.json';
const TEST = 'resources/icarTestDayResultEventResource.json';

interface Schema {
  readonly $ref?: string;
  readonly allOf?: readonly Schema[];
  readonly type?: string;
  readonly format?: string;
  readonly enum?: readonly string[];
  readonly required?: readonly string[];
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly items?: Schema;
  readonly nullable?: boolean;
}
interface Placed {
  readonly schema: Schema;
  readonly file: string;
}
const load = (file: string): Placed => ({
  schema: JSON.parse(readFileSync(join(DIR, file), 'utf8')) as Schema,
  file,
});

/** The parts of a schema, references followed and `allOf` taken apart: a plain second way through the files. */
function partsOf({ schema, file }: Placed): Placed[] {
  const refs = schema.$ref ? partsOf(load(posix.join(posix.dirname(file), schema.$ref))) : [];
  const all = (schema.allOf ?? []).flatMap((part) => partsOf({ schema: part, file }));
  return [{ schema, file }, ...refs, ...all];
}

/** An example with every property that the schema has. */
function example(placed: Placed, name = ''): unknown {
  const parts = partsOf(placed);
  const first = <Key extends keyof Schema>(key: Key) =>
    parts.find(({ schema }) => schema[key] !== undefined)?.schema[key];
  const listed = first('enum');
  if (listed) return listed[0];
  const properties = parts.flatMap(({ schema, file }) =>
    Object.entries(schema.properties ?? {}).map(([key, part]) => [key, { schema: part, file }] as const),
  );
  if (properties.length > 0)
    return Object.fromEntries(properties.map(([key, part]) => [key, example(part, key)]));
  const type = first('type');
  if (type === 'array') {
    const items = parts.find(({ schema }) => schema.items);
    return items?.schema.items ? [example({ schema: items.schema.items, file: items.file }, name)] : [];
  }
  if (type === 'number') return 1.5;
  if (type === 'boolean') return name !== 'isDeleted';
  return first('format') === 'date-time' ? '2026-05-21T11:40:00Z' : 'text';
}

const whole = (file: string) =>
  ({ ...(example(load(file)) as object), resourceType: posix.basename(file, '.json') }) as Record<
    string,
    unknown
  >;
const faultsOf = (event: unknown) =>
  readIcar(JSON.stringify(event)).faults.map(({ told }) => `${told.key} ${told.slots['path'] ?? ''}`.trim());

type Change = (holder: Record<string, unknown>, key: string) => void;
/** Every property of an example with its path, its schema, and a copy of the example to break there. */
function* breaks(
  file: string,
): Generator<{ path: string; placed: Placed; broken: (change: Change) => unknown }> {
  function* walk(
    placed: Placed,
    path: readonly string[],
  ): Generator<{ path: readonly string[]; placed: Placed }> {
    yield { path, placed };
    for (const { schema, file: own } of partsOf(placed)) {
      for (const [key, part] of Object.entries(schema.properties ?? {}))
        yield* walk({ schema: part, file: own }, [...path, key]);
      if (schema.items) yield* walk({ schema: schema.items, file: own }, [...path, '0']);
    }
  }
  for (const { path, placed } of walk(load(file), [])) {
    if (path.length === 0) continue;
    const broken = (change: Change) => {
      const copy = structuredClone(whole(file));
      const holder = path
        .slice(0, -1)
        .reduce<unknown>((at, key) => (at as Record<string, unknown>)[key], copy);
      change(holder as Record<string, unknown>, path.at(-1) ?? '');
      return copy;
    };
    yield { path: path.join('.'), placed, broken };
  }
}

describe.each([VISIT, TEST])('%s', (file) => {
  it('takes an example with every property, and one with the required alone', () => {
    expect(faultsOf(whole(file))).toEqual([]);
    const least = {
      resourceType: posix.basename(file, '.json'),
      animal: { id: '7', scheme: 'org.example' },
      ...(file === VISIT && {
        milkingStartingDateTime: '2026-05-21T11:40:00Z',
        milkingMilkWeight: { unitCode: 'KGM', value: 2.5 },
      }),
    };
    expect(faultsOf(least)).toEqual([]);
  });

  it('refuses every property of a wrong type, code or time, and names its path', () => {
    let tried = 0;
    for (const { path, placed, broken } of breaks(file)) {
      if (path === 'resourceType') continue;
      const parts = partsOf(placed).map(({ schema }) => schema);
      const bad = broken(
        (holder, key) => (holder[key] = parts.some(({ type }) => type === 'object') ? 'text' : { odd: 1 }),
      );
      expect(faultsOf(bad), path).toContainEqual(
        expect.stringMatching(new RegExp(`^fault\\.icar\\.\\w+ ${path}$`)),
      );
      if (parts.some((part) => part.enum))
        expect(faultsOf(broken((holder, key) => (holder[key] = 'no such code'))), path).toContain(
          `fault.icar.enum ${path}`,
        );
      if (parts.some(({ format }) => format === 'date-time'))
        expect(faultsOf(broken((holder, key) => (holder[key] = '21 May 2026'))), path).toContain(
          `fault.icar.time ${path}`,
        );
      tried += 1;
    }
    expect(tried).toBeGreaterThan(file === VISIT ? 60 : 25);
  });

  it('misses every property that the schema asks for', () => {
    let tried = 0;
    for (const { path, placed, broken } of breaks(file)) {
      const required = partsOf(placed).flatMap(({ schema }) => schema.required ?? []);
      for (const name of required) {
        const bad = broken((holder, key) => delete (holder[key] as Record<string, unknown>)[name]);
        expect(faultsOf(bad), `${path}.${name}`).toContain(`fault.icar.required ${path}.${name}`);
        tried += 1;
      }
    }
    const nobody = whole(file);
    delete nobody['animal'];
    expect(faultsOf(nobody)).toContain('fault.icar.required animal');
    expect(tried).toBeGreaterThan(5);
  });

  it('takes null where the schema says nullable, as OpenAPI 3.0 has it', () => {
    const nullable = [...breaks(file)].filter(({ placed }) => placed.schema.nullable === true);
    for (const { path, broken } of nullable)
      expect(faultsOf(broken((holder, key) => (holder[key] = null))), path).toEqual([]);
    expect(nullable.length).toBeGreaterThan(1);
  });
});

describe('the schemas in the project', () => {
  it('are whole: every reference leads to a file, and the licence lies beside them', () => {
    for (const file of [VISIT, TEST]) expect(partsOf(load(file)).length).toBeGreaterThan(3);
    expect(readFileSync(join(DIR, 'LICENSE'), 'utf8')).toContain('Apache License');
  });

  const published = openData('icar');
  it.skipIf(published === null)(`are the published ones, letter by letter (${NOT_HERE})`, () => {
    for (const folder of ['enums', 'types', 'resources'])
      for (const name of readdirSync(join(DIR, folder))) {
        const original = join(published ?? '', folder, name);
        expect(existsSync(original)).toBe(true);
        expect(readFileSync(join(DIR, folder, name), 'utf8')).toBe(readFileSync(original, 'utf8'));
      }
  });
});

describe('a file of events', () => {
  const visit = whole(VISIT);

  it('may be one event, a list, a collection with member, or one event a line', () => {
    const count = (text: string) => readIcar(text).visits.length;
    expect(count(JSON.stringify(visit))).toBe(1);
    expect(count(JSON.stringify([visit, visit]))).toBe(2);
    // The exchange's collections keep their events under `member` (ICAR ADE; from memory).
    expect(count(JSON.stringify({ member: [visit, visit, visit] }))).toBe(3);
    expect(count(`${JSON.stringify(visit)}\r\n\n${JSON.stringify(visit)}\n`)).toBe(2);
  });

  it('may name its kind by a web address', () => {
    const named = { ...visit, resourceType: 'https://example.org/ade/icarMilkingVisitEventResource' };
    expect(readIcar(JSON.stringify(named)).visits).toHaveLength(1);
  });

  it('with one broken line loses that line alone, and says which', () => {
    const read = readIcar(`${JSON.stringify(visit)}\n{"resourceType":\n${JSON.stringify(visit)}`);
    expect(read.visits.map(({ place }) => place)).toEqual([1, 3]);
    expect(read.faults.map(({ line, told }) => [line, told.key])).toEqual([[2, 'fault.icar.json']]);
  });

  it.each(['null', '"text"', '[[]]', '[null]', '{}', '{"resourceType":7}', '{"resourceType":""}'])(
    'that is %s has no event and says so',
    (text) => {
      const read = readIcar(text);
      expect([read.visits, read.tests, read.faults.length > 0]).toEqual([[], [], true]);
    },
  );
});
