// Expands JSON-LD without a network: schema.org's context is written out here for the terms that our pages use.
import { createRequire } from 'node:module';

interface Expander {
  expand(
    document: unknown,
    options: { documentLoader: (url: string) => Promise<unknown>; safe: boolean },
  ): Promise<Record<string, unknown>[]>;
}
const jsonld = createRequire(import.meta.url)('jsonld') as Expander;

const SCHEMA = 'https://schema.org/';
// As schema.org publishes it (from memory): texts by default, a licence is an address, times are durations.
const CONTEXT = {
  '@vocab': SCHEMA,
  license: { '@id': `${SCHEMA}license`, '@type': '@id' },
  timeRequired: { '@id': `${SCHEMA}timeRequired`, '@type': `${SCHEMA}Duration` },
};

/** Expands a document that names schema.org's context. Throws where it names any other address, or drops a term. */
export function expandJsonLd(document: unknown): Promise<Record<string, unknown>[]> {
  const documentLoader = (url: string): Promise<unknown> =>
    /^https?:\/\/schema\.org\/?$/.test(url)
      ? Promise.resolve({ contextUrl: null, documentUrl: url, document: { '@context': CONTEXT } })
      : Promise.reject(new Error(`The data asks for ${url}.`));
  return jsonld.expand(document, { documentLoader, safe: true });
}

/** A property of an expanded node: its plain values. */
export function valuesOf(node: Record<string, unknown>, term: string): unknown[] {
  const values = node[SCHEMA + term];
  return Array.isArray(values)
    ? (values as Record<string, unknown>[]).map((one) => one['@value'] ?? one['@id'] ?? one)
    : [];
}

/** What is wrong with an expanded learning resource by form; an empty list where nothing is. */
export function learningFaults(nodes: readonly Record<string, unknown>[], lang: string): string[] {
  const [node, ...others] = nodes;
  if (!node || others.length > 0) return [`${nodes.length} resources instead of one`];
  const faults: string[] = [];
  const expects = (isSo: boolean, told: string) => {
    if (!isSo) faults.push(told);
  };
  const one = (term: string): string => {
    const values = valuesOf(node, term);
    expects(
      values.length === 1 && typeof values[0] === 'string' && values[0].trim() !== '',
      `${term} is not one text`,
    );
    return typeof values[0] === 'string' ? values[0] : '';
  };
  expects(JSON.stringify(node['@type']) === JSON.stringify([`${SCHEMA}LearningResource`]), 'another type');
  for (const term of ['name', 'description', 'educationalLevel', 'learningResourceType']) one(term);
  // RFC 5646, as far as our languages go; ISO 8601 durations in whole minutes.
  expects(/^[a-z]{2,3}(-[A-Z]{2})?$/.test(one('inLanguage')), 'inLanguage is no language tag');
  expects(valuesOf(node, 'inLanguage')[0] === lang, `inLanguage is not ${lang}`);
  expects(/^PT[1-9]\d{0,2}M$/.test(one('timeRequired')), 'timeRequired is no duration');
  const [from = 0, to = 0] = one('typicalAgeRange').split('-').map(Number);
  expects(from >= 4 && to > from && to <= 19, 'typicalAgeRange is no range');
  expects(/^https:\/\/\S+$/.test(one('license')), 'license is no address');
  expects(valuesOf(node, 'isAccessibleForFree')[0] === true, 'not free');
  for (const term of ['teaches', 'educationalUse', 'accessibilityFeature'])
    expects(valuesOf(node, term).length > 0, `${term} is missing`);
  const alignments = (node[`${SCHEMA}educationalAlignment`] ?? []) as Record<string, unknown>[];
  expects(alignments.length > 0, 'no standard is named');
  for (const alignment of alignments)
    for (const term of ['alignmentType', 'educationalFramework', 'targetName', 'targetDescription'])
      expects(valuesOf(alignment, term).length === 1, `${term} of a standard is missing`);
  return faults;
}
