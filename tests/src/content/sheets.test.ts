// The sheets of content/sheets as they are written: enough for every band and stage, in both languages, at the band's level.
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { BANDS, type Band } from '../../../shared/quantity/grade.ts';
import { WHENS } from '../../../shared/sheet/plan.ts';
import { figuresOf } from '../../../shared/herd/figures.ts';
import { openLedger } from '../../../shared/herd/ledger.ts';
import { readSheetFiles, type SheetEntry } from '../../../src/content/sheetFiles.ts';
import { readFarm } from '../../../src/farm/readFarm.ts';

const LANGUAGES = ['en', 'es'];
const demo = readFarm(join('content', 'farm'), { asOf: undefined, now_ms: 0 });
if (!demo.ok) throw new Error('the demo farm has faults');
const { book, farm, asOf } = demo;
const ids = Object.keys(figuresOf(book, openLedger(book, asOf)).figures);
const { sheets, faults, notices } = readSheetFiles(join('content', 'sheets'), LANGUAGES, ids);
const ofBand = (band: Band) => sheets.filter(({ plan }) => plan.band === band);

// Longest and mean sentence by band, words: the hand-out's limits (education, section 2.1).
const LONGEST: Readonly<Record<Band, number>> = { 'k-2': 10, '3-5': 14, '6-8': 20, '9-12': 25 };
const MEAN: Readonly<Record<Band, number>> = { 'k-2': 7, '3-5': 11, '6-8': 15, '9-12': 19 };
const sentences = (text: string) => text.split(/(?<=[.?!])\s+(?=[\p{Lu}¿¡{])/u);
const words = (sentence: string) => sentence.split(/\s+/).filter((word) => /[\p{L}\d]/u.test(word)).length;
const said = ({ inLanguage }: SheetEntry, lang: string) =>
  (inLanguage[lang]?.texts ?? []).flatMap(({ text }) => sentences(text));

describe('content/sheets', () => {
  it('holds no fault, and every sheet in both languages', () => {
    expect({ faults, notices }).toEqual({ faults: [], notices: [] });
  });

  it.each(BANDS)('has six sheets or more for %s, of every stage of a visit', (band) => {
    expect(ofBand(band).length).toBeGreaterThanOrEqual(6);
    for (const when of WHENS)
      expect(ofBand(band).filter(({ plan }) => plan.when === when).length, when).toBeGreaterThanOrEqual(2);
  });

  it('has sheets of two to four tasks, so that a copy takes one leaf', () => {
    const odd = sheets.filter(({ plan }) => plan.tasks.length < 2 || plan.tasks.length > 4);
    expect(odd.map(({ plan }) => `${plan.name}: ${plan.tasks.length}`)).toEqual([]);
  });

  it('has no two sheets of the same title, or of the same tasks', () => {
    for (const lang of LANGUAGES) {
      const titles = sheets.map(({ inLanguage }) => inLanguage[lang]?.title);
      expect(new Set(titles).size).toBe(sheets.length);
    }
    expect(new Set(sheets.map(({ plan }) => [...plan.tasks].sort().join())).size).toBe(sheets.length);
  });

  it('says the same at the same places in both languages, as often', () => {
    const odd = sheets.filter(({ inLanguage: { en, es } }) => {
      const shapeOf = (file: typeof en) => [file?.texts.map(({ before }) => before), file?.materials.length];
      return JSON.stringify(shapeOf(en)) !== JSON.stringify(shapeOf(es));
    });
    expect(odd.map(({ plan }) => plan.name)).toEqual([]);
  });

  it.each(LANGUAGES)('speaks to the child in sentences of the band’s length in %s', (lang) => {
    const long = sheets.flatMap((sheet) =>
      said(sheet, lang)
        .filter((sentence) => words(sentence) > LONGEST[sheet.plan.band])
        .map((sentence) => `${sheet.plan.name}: ${words(sentence)} words: ${sentence}`),
    );
    expect(long).toEqual([]);
    for (const band of BANDS) {
      const all = ofBand(band).flatMap((sheet) => said(sheet, lang).map(words));
      expect(all.reduce((sum, n) => sum + n, 0) / all.length, band).toBeLessThanOrEqual(MEAN[band]);
    }
  });

  it('names no doe, no farm and no place of the demo', () => {
    const names = [...book.does.map(({ name }) => name), farm.name, ...farm.name.split(' ').slice(0, 1)];
    const naming = sheets.flatMap(({ plan, inLanguage }) =>
      LANGUAGES.flatMap((lang) => {
        const file = inLanguage[lang];
        const all = [file?.title, file?.about, ...(file?.texts.map(({ text }) => text) ?? [])].join(' ');
        return names
          .filter((name) => new RegExp(`\\b${name}\\b`).test(all))
          .map((name) => `${plan.name}: ${name}`);
      }),
    );
    expect(naming).toEqual([]);
  });

  it('names figures of the whole herd alone', () => {
    const named = sheets.flatMap(
      ({ inLanguage }) =>
      LANGUAGES.flatMap((lang) => inLanguage[lang]?.texts.flatMap(({ text }) => [...text.matchAll(/\{([^}]*)\}/g)].map((one) => one[1])) ?? []), // prettier-ignore
    );
    expect(named.length).toBeGreaterThan(0);
    expect(named.filter((id) => !id?.startsWith('herd.'))).toEqual([]);
  });

  // Wrong words for goats in machine-made Spanish: the hand-out (education, section 8).
  it('uses none of the wrong Spanish words for goats', () => {
    const BANNED =
      /\b(ciervas?|dólar(es)?|pandeo|tetinas?|tetas?|cabrón|puntal|soporte de leche|puesto de leche|niñ[oa]s?)\b/i;
    const wrong = sheets.filter(
      ({ inLanguage: { es } }) =>
      BANNED.test([es?.title, es?.about, ...(es?.materials ?? []), ...(es?.texts.map(({ text }) => text) ?? [])].join(' ')), // prettier-ignore
    );
    expect(wrong.map(({ plan }) => plan.name)).toEqual([]);
  });

  it('tells the child to wash at the end of every sheet that is used at the goats', () => {
    const silent = sheets.filter(({ plan, inLanguage }) => {
      const last = (lang: string) => inLanguage[lang]?.texts.at(-1)?.text ?? '';
      return (
        plan.when === 'at' && !(/wash your hands/i.test(last('en')) && /lávate las manos/i.test(last('es')))
      );
    });
    expect(silent.map(({ plan }) => plan.name)).toEqual([]);
  });
});
