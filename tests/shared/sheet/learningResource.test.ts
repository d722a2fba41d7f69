// What is told to machines about a sheet or a lesson: the form of schema.org's LearningResource, read by a JSON-LD processor.
import { describe, expect, it } from 'vitest';
import { BANDS } from '../../../shared/quantity/grade.ts';
import { learningResource, type LearningMatter } from '../../../shared/sheet/learningResource.ts';
import { wordsOf } from '../../../src/site/words.ts';
import { expandJsonLd, learningFaults, valuesOf } from '../../support/jsonLd.ts';

const matter: LearningMatter = {
  kind: 'sheet',
  name: 'Cups we can count',
  about: 'Count cups.',
  band: 'k-2',
  minutes: 25,
  teaches: [],
  standards: ['K.CC.B.5', '1-LS1-2', 'W.2.8'],
  farm: 'Hill Farm',
};

describe('learningResource', () => {
  it.each(['en', 'es'])(
    'has the form of a learning resource in %s, for every band and kind',
    async (lang) => {
      for (const band of BANDS)
        for (const kind of ['sheet', 'lesson'] as const) {
          const told = learningResource({ ...matter, band, kind, teaches: ['Count.'] }, wordsOf(lang));
          expect(learningFaults(await expandJsonLd(told), lang)).toEqual([]);
        }
    },
  );

  it('teaches the paraphrases of its standards where nothing else is said, and names each framework in full', async () => {
    const [node] = await expandJsonLd(learningResource(matter, wordsOf('en')));
    expect(valuesOf(node as Record<string, unknown>, 'teaches')).toEqual(
      matter.standards.map((code) => wordsOf('en').entries[`sheet.standard.${code}`]),
    );
    const { educationalAlignment, timeRequired } = learningResource(matter, wordsOf('en'));
    expect(educationalAlignment.map((one) => [one.educationalFramework, one.targetName])).toEqual([
      ['Common Core State Standards for Mathematics', 'K.CC.B.5'],
      ['Next Generation Science Standards', '1-LS1-2'],
      ['Common Core State Standards for English Language Arts', 'W.2.8'],
    ]);
    expect(timeRequired).toBe('PT25M');
  });

  it('throws for a standard that is none', () => {
    expect(() => learningResource({ ...matter, standards: ['K.CC.B.55'] }, wordsOf('en'))).toThrow(
      'K.CC.B.55',
    );
  });
});

describe('the check itself', () => {
  it('names what is wrong, and refuses any other address', async () => {
    const told = {
      ...learningResource(matter, wordsOf('en')),
      timeRequired: '25 min',
      teaches: [],
      license: '',
    };
    expect(learningFaults(await expandJsonLd(told), 'es')).toEqual([
      'inLanguage is not es',
      'timeRequired is no duration',
      'license is no address',
      'teaches is missing',
    ]);
    await expect(expandJsonLd({ ...told, '@context': 'https://example.org/' })).rejects.toThrow();
  });
});
