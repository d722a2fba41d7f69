// The sheets that the farm hands out, as pages need them: plans, words, and the weeks that they are made from.
import { join } from 'node:path';
import { lactationWeeks } from '../../shared/lactation/lactationWeeks.ts';
import { measureOf, shownIn, whole, type Band } from '../../shared/quantity/grade.ts';
import { earlierWeeks } from '../../shared/sheet/earlierWeeks.ts';
import { count, msg, qty, type Slot } from '../../shared/sheet/message.ts';
import type { SheetFront, SheetPlan } from '../../shared/sheet/plan.ts';
import { standardsOf } from '../../shared/sheet/support.ts';
import { tellText } from '../../shared/sheet/tell.ts';
import type { SheetSource } from '../../shared/tasks/context.ts';
import { kindsOf } from '../../shared/tasks/kinds.ts';
import type { Words } from '../../shared/words/words.ts';
import { tellContentFaults } from '../content/contentFault.ts';
import { FIGURE_SLOT } from '../content/sheetFile.ts';
import { readSheetFiles, type SheetEntry } from '../content/sheetFiles.ts';
import { openSite, wordsOf, wordsUnder } from './site.ts';

const SHEETS_DIR = join(process.cwd(), 'content', 'sheets');
let shelf: readonly SheetEntry[] | null = null;
const sources = new Map<Band, SheetSource>();

/** All sheets, the youngest band first, in the order of a visit. Throws the whole list of what is wrong. */
export function sheetEntries(): readonly SheetEntry[] {
  if (shelf) return shelf;
  const { languages, figures } = openSite();
  const { sheets, faults } = readSheetFiles(SHEETS_DIR, languages, Object.keys(figures.figures));
  if (faults.length > 0) throw new Error(tellContentFaults(faults));
  shelf = sheets;
  return shelf;
}

/** What every sheet of a band is made from: the week, and the earlier weeks for what it cannot carry. */
export function sheetSource(band: Band): SheetSource {
  const known = sources.get(band);
  if (known) return known;
  const { farm, book, ledger, week, jar_mL } = openSite();
  // The youngest read no curve, and what they do not need does not travel to the browser.
  const curves = band === '6-8' || band === '9-12' ? lactationWeeks(book, ledger) : undefined;
  const source: SheetSource = { week, units: farm.units, jar_mL, milkings: farm.milkings, curves };
  const whole = { ...source, earlier: earlierWeeks(book, ledger, source, band) };
  sources.set(band, whole);
  return whole;
}

/** Title and texts of a sheet in a language, its figures filled in; a text whose figure has no value yet is left out. */
export function sheetFront({ plan, inLanguage }: SheetEntry, lang: string): SheetFront | null {
  const file = inLanguage[lang];
  if (!file) return null;
  const texts = file.texts.flatMap(({ before, text }) => {
    const filled = fillFigures(text, plan.band, lang);
    return filled === null ? [] : [{ before, text: filled }];
  });
  return { title: file.title, about: file.about, materials: file.materials, texts };
}

/** A text with its figures as a band reads them, or null where one has no value yet. */
export function fillFigures(text: string, band: Band, lang: string): string | null {
  let missing = false;
  const filled = text.replace(FIGURE_SLOT, (_, id: string) => {
    const told = figureText(id, band, lang);
    missing ||= told === null;
    return told ?? '';
  });
  return missing ? null : filled;
}

/** A figure as a band reads it: "91 cups", "24 days"; null where it has no value. Throws for an id that is none. */
export function figureText(id: string, band: Band, lang: string): string | null {
  const { farm, figures } = openSite();
  const figure = figures.figures[id];
  if (!figure) throw new Error(`There is no figure "${id}".`);
  if (figure.value === null) return null;
  const measure = measureOf(band, farm.units);
  const slot: Slot =
    figure.unit === 'L'
      ? qty(shownIn(figure.value * 1000, measure), measure.unit)
      : figure.unit === 'day'
        ? qty(whole(figure.value), 'day')
        : count(figure.value);
  return tellText(wordsOf(lang), msg('sheet.answer', { amount: slot }));
}

/** The words that a sheet's page sends to the browser; of the standards only those that its band's tasks or its head may name. */
export function sheetWords(plan: SheetPlan, lang: string): Words {
  const { entries, ...rest } = wordsUnder(lang, ['sheet', 'task']);
  const codes = [...kindsOf(plan.band).flatMap(({ standards }) => standards), ...standardsOf(plan)];
  const wanted = new Set(codes.map((code) => `sheet.standard.${code}`));
  const kept = Object.entries(entries).filter(
    ([key]) => !key.startsWith('sheet.standard.') || wanted.has(key),
  );
  return { ...rest, entries: Object.fromEntries(kept) };
}
