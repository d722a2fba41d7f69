// Facts and claims of content/facts: each with its source, or the build stops.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import * as z from 'zod';
import { nearestName } from '../farm/nearest.ts';

/** Where facts, claims and milk tables are kept. */
export const FACTS_DIR = join(process.cwd(), 'content', 'facts');

/** The files that hold facts. */
export const FACT_FILES = [
  'facts.yaml',
  'composition.yaml',
  'handling.yaml',
  'products.yaml',
  'breeding.yaml',
  'feed.yaml',
  'climate.yaml',
  'animals.yaml',
  'practice.yaml',
] as const;
const CLAIMS_FILE = 'claims.yaml';

const text = z.string().trim().min(1);

const factShape = z
  .strictObject({
    en: text.describe('The statement, in English.'),
    es: text.describe('The same, in Spanish.'),
    value: z.number().optional().describe('The number that stands for it where a rule needs one.'),
    range: z.tuple([z.number(), z.number()]).optional().describe('Least and most.'),
    unit: text.optional().describe('Unit of value and range.'),
    source: text.describe('Who says so: author, title, year.'),
    sure: z.enum(['seen', 'memory', 'practice']).describe('Seen in a copy, from memory, or common practice.'),
  })
  .refine(({ value, range, unit }) => unit !== undefined || (value === undefined && range === undefined), {
    message: 'a value or range needs a unit',
  })
  .refine(({ range }) => range === undefined || range[0] <= range[1], {
    message: 'the least of a range comes first',
  })
  .refine(
    ({ value, range }) =>
      value === undefined || range === undefined || (range[0] <= value && value <= range[1]),
    { message: 'the value lies outside its range' },
  );

/** A reference value or statement with its source. */
export type Fact = z.infer<typeof factShape>;

const bothShape = z.strictObject({ en: text, es: text });
const claimShape = z.strictObject({
  claim: bothShape.describe('What people say.'),
  verdict: z.enum(['false', 'misleading', 'half true', 'true']),
  right: bothShape.describe('What is so.'),
  basis: z.array(text).min(1).describe('Ids of the facts it rests on.'),
});

/** Something that visitors repeat, and what is so. */
export type Claim = z.infer<typeof claimShape>;

/** Facts from the text of a file. Throws, naming file, fact and what is wrong, where one is not whole. */
export function factsIn(file: string, yaml: string): Record<string, Fact> {
  return shaped(z.record(z.string(), factShape), file, yaml);
}

/** Claims from the text of a file; throws likewise. */
export function claimsIn(file: string, yaml: string): Record<string, Claim> {
  return shaped(z.record(z.string(), claimShape), file, yaml);
}

function shaped<T>(shape: z.ZodType<T>, file: string, yaml: string): T {
  const read = shape.safeParse(parse(yaml) ?? {});
  if (read.success) return read.data;
  const faults = read.error.issues.map(({ path, message }) => `  ${path.map(String).join('.')}: ${message}`);
  throw new Error(`content/facts/${file} is not right:\n${faults.join('\n')}`);
}

const read = (file: string) => readFileSync(join(FACTS_DIR, file), 'utf8');

let facts: ReadonlyMap<string, Fact> | null = null;

/** Every fact by its id, file after file. Throws where two files share an id. */
export function allFacts(): ReadonlyMap<string, Fact> {
  if (facts) return facts;
  const all = new Map<string, Fact>();
  for (const file of FACT_FILES)
    for (const [id, fact] of Object.entries(factsIn(file, read(file)))) {
      if (all.has(id))
        throw new Error(`content/facts/${file} has "${id}" a second time: give one another id.`);
      all.set(id, fact);
    }
  return (facts = all);
}

/** A fact by its id. Throws where there is none, so that no page shows a claim without its source. */
export function factOf(id: string): Fact {
  const fact = allFacts().get(id);
  if (fact) return fact;
  throw new Error(unknown('fact', id, allFacts().keys()));
}

let claims: ReadonlyMap<string, Claim> | null = null;

/** Every claim by its id. Throws where one rests on a fact that is not there. */
export function allClaims(): ReadonlyMap<string, Claim> {
  if (claims) return claims;
  const all = new Map(Object.entries(claimsIn(CLAIMS_FILE, read(CLAIMS_FILE))));
  for (const claim of all.values()) for (const id of claim.basis) factOf(id);
  return (claims = all);
}

/** A claim by its id. Throws where there is none. */
export function claimOf(id: string): Claim {
  const claim = allClaims().get(id);
  if (claim) return claim;
  throw new Error(unknown('claim', id, allClaims().keys()));
}

function unknown(kind: string, id: string, ids: Iterable<string>): string {
  const nearest = nearestName(id, ids);
  return `content/facts has no ${kind} "${id}"${nearest === null ? '' : `; the nearest is "${nearest}"`}.`;
}
