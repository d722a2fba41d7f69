// The list of standards: codes of their framework's form, a grade for each, and our own words for each in both languages.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import {
  bandOfStandard,
  firstGrade,
  FRAMEWORKS,
  STANDARDS,
  type Framework,
} from '../../../shared/tasks/standards.ts';
import { TASK_KINDS } from '../../../shared/tasks/kinds.ts';

// Form of the codes: the hand-out (education, sections 1.1 and 1.4). It shows form, not that a standard exists.
const FORM: Readonly<Record<Framework, RegExp>> = {
  NGSS: /^(K|[1-5]|MS|HS|K-2|3-5)-(LS|PS|ESS|ETS)[1-4]-\d{1,2}$/,
  'CCSS Math':
    /^([K1-8]\.(CC|OA|NBT|NF|MD|G|RP|NS|EE|F|SP)\.[A-D]\.\d{1,2}(\.[a-d])?|HS(N|A|F|G|S)-[A-Z]{1,4}\.[A-D]\.\d{1,2}(\.?[a-e])?)$/,
  'CCSS ELA': /^((RI|W|SL)\.[K1-5]|(RST|WHST)\.(6-8|9-10|11-12|9-12))\.\d{1,2}$/,
};
const codes = Object.keys(STANDARDS);
const paraphrases = (lang: string): Record<string, string> =>
  (parse(readFileSync(`content/words/${lang}/standards.yaml`, 'utf8')) as { sheet: { standard: Record<string, string> } }).sheet.standard; // prettier-ignore

describe('STANDARDS', () => {
  it('have codes of the form that their framework gives them', () => {
    const odd = Object.entries(STANDARDS).filter(([code, framework]) => !FORM[framework].test(code));
    expect(odd).toEqual([]);
    expect(FRAMEWORKS.map((one) => Object.values(STANDARDS).includes(one))).toEqual([true, true, true]);
  });

  it('are first asked for in the grade that the code names', () => {
    expect(
      [
        'K.CC.B.5',
        'K-2-ETS1-1',
        '3-5-ETS1-2',
        'RI.2.7',
        'WHST.6-8.1',
        'MS-LS2-3',
        'RST.11-12.1',
        'HSS-CP.A.4',
      ].map((code) => [code, firstGrade(code), bandOfStandard(code)]),
    ).toEqual([
      ['K.CC.B.5', 0, 'k-2'],
      ['K-2-ETS1-1', 0, 'k-2'],
      ['3-5-ETS1-2', 3, '3-5'],
      ['RI.2.7', 2, 'k-2'],
      ['WHST.6-8.1', 6, '6-8'],
      ['MS-LS2-3', 6, '6-8'],
      ['RST.11-12.1', 11, '9-12'],
      ['HSS-CP.A.4', 9, '9-12'],
    ]);
  });

  it.each(['en', 'es'])(
    'have a paraphrase each in %s, no two alike, and no code has one without standing here',
    (lang) => {
      const told = paraphrases(lang);
      expect(Object.keys(told).sort()).toEqual([...codes].sort());
      expect(new Set(Object.values(told)).size).toBe(codes.length);
      for (const [code, text] of Object.entries(told)) expect(text.length, code).toBeGreaterThan(12);
    },
  );

  it('know every code that a kind of task names', () => {
    const unknown = TASK_KINDS.flatMap(({ name, standards }) =>
      standards.filter((code) => !(code in STANDARDS)).map((code) => `${name}: ${code}`),
    );
    expect(unknown).toEqual([]);
  });
});
