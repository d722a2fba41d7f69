// A sheet or a lesson as schema.org describes learning material: level, time, what it teaches, language, licence.
import type { Band } from '../quantity/grade.ts';
import { STANDARDS } from '../tasks/standards.ts';
import { say, type Words } from '../words/words.ts';

/** What is said of a sheet or a lesson. */
export interface LearningMatter {
  readonly kind: 'sheet' | 'lesson';
  readonly name: string;
  readonly about: string;
  readonly band: Band;
  /** Time that a class takes, whole minutes. */
  readonly minutes: number;
  /** What it teaches, in sentences; without any, the paraphrases of its standards stand here. */
  readonly teaches: readonly string[];
  /** Codes of the standards that it supports. */
  readonly standards: readonly string[];
  /** Who hands it out. */
  readonly farm: string;
}

/** A standard that the material supports, as schema.org's AlignmentObject. */
export interface Alignment {
  readonly '@type': 'AlignmentObject';
  readonly alignmentType: 'teaches';
  readonly educationalFramework: string;
  readonly targetName: string;
  readonly targetDescription: string;
}

/** JSON-LD of a learning resource; every text in the language that `inLanguage` names. */
export interface LearningResource {
  readonly '@context': 'https://schema.org';
  readonly '@type': 'LearningResource';
  readonly name: string;
  readonly description: string;
  /** BCP 47. */
  readonly inLanguage: string;
  readonly educationalLevel: string;
  /** Years, `5-8`. */
  readonly typicalAgeRange: string;
  readonly learningResourceType: string;
  readonly educationalUse: readonly string[];
  /** ISO 8601, `PT20M`. */
  readonly timeRequired: string;
  readonly teaches: readonly string[];
  readonly educationalAlignment: readonly Alignment[];
  readonly license: string;
  readonly isAccessibleForFree: true;
  readonly accessibilityFeature: readonly string[];
  readonly accessMode: readonly string[];
  readonly provider: { readonly '@type': 'Organization'; readonly name: string };
}

/** The text of the licence that everything here stands under, MIT. */
export const LICENSE_URL = 'https://spdx.org/licenses/MIT.html';

// Ages of US grades: kindergarten begins at 5, each grade a year later (common practice, no source).
const AGES: Readonly<Record<Band, string>> = { 'k-2': '5-8', '3-5': '8-11', '6-8': '11-14', '9-12': '14-18' };
// Words of schema.org's accessibility vocabulary (from memory), for what the pages and their prints have.
const FEATURES: Readonly<Record<LearningMatter['kind'], readonly string[]>> = {
  sheet: ['alternativeText', 'largePrint', 'structuralNavigation', 'taggedPDF'],
  lesson: ['readingOrder', 'structuralNavigation'],
};
const USES: Readonly<Record<LearningMatter['kind'], readonly string[]>> = {
  sheet: ['assignment', 'practice'],
  lesson: ['lesson plan'],
};

/** Describes a sheet or a lesson. Throws for a standard that is not in our list. */
export function learningResource(matter: LearningMatter, words: Words): LearningResource {
  const { kind, band, minutes, standards } = matter;
  const paraphrases = standards.map((code) => say(words, `sheet.standard.${code}`));
  return {
    '@context': 'https://schema.org',
    '@type': 'LearningResource',
    name: matter.name,
    description: matter.about,
    inLanguage: words.lang,
    educationalLevel: say(words, `sheet.grades.${band}`),
    typicalAgeRange: AGES[band],
    learningResourceType: kind === 'sheet' ? 'worksheet' : 'lesson plan',
    educationalUse: USES[kind],
    timeRequired: `PT${minutes}M`,
    teaches: matter.teaches.length > 0 ? matter.teaches : paraphrases,
    educationalAlignment: standards.map((code, place) => ({
      '@type': 'AlignmentObject',
      alignmentType: 'teaches',
      educationalFramework: frameworkOf(code),
      targetName: code,
      targetDescription: paraphrases[place] ?? '',
    })),
    license: LICENSE_URL,
    isAccessibleForFree: true,
    accessibilityFeature: FEATURES[kind],
    accessMode: kind === 'sheet' ? ['textual', 'visual'] : ['textual'],
    provider: { '@type': 'Organization', name: matter.farm },
  };
}

const FULL_NAMES = {
  'CCSS Math': 'Common Core State Standards for Mathematics',
  'CCSS ELA': 'Common Core State Standards for English Language Arts',
  NGSS: 'Next Generation Science Standards',
} as const;

function frameworkOf(code: string): string {
  const framework = STANDARDS[code];
  if (!framework) throw new Error(`There is no standard "${code}" in our list.`);
  return FULL_NAMES[framework];
}
