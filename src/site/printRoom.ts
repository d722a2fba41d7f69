// What the print room can print: the shelf of sheets, and each language's words and fronts.
import { BANDS } from '../../shared/quantity/grade.ts';
import type { Shelf } from '../../shared/pack/order.ts';
import { paperOf } from '../../shared/sheet/pageMeasures.ts';
import type { SheetFront } from '../../shared/sheet/plan.ts';
import { firstSeed } from '../../shared/sheet/sheet.ts';
import type { EarlierWeeks } from '../../shared/tasks/context.ts';
import type { Words } from '../../shared/words/words.ts';
import { sheetEntries, sheetFront, sheetSource } from './sheets.ts';
import { openSite, wordsUnder } from './site.ts';

/** Every sheet that can be ordered, and what is taken where nothing is said. */
export function printShelf(): Shelf {
  const { farm, languages, week } = openSite();
  return {
    langs: languages,
    sheets: sheetEntries().map(({ plan: { name, band, when, minutes }, inLanguage }) => ({
      name,
      band,
      when,
      minutes,
      langs: Object.keys(inLanguage),
    })),
    word: firstSeed(week),
    paper: paperOf(farm.units),
  };
}

/** The words of sheets in a language, with title and texts of each sheet by its name. */
export function tongueOf(lang: string): {
  readonly words: Words;
  readonly fronts: Readonly<Record<string, SheetFront>>;
} {
  const fronts = sheetEntries().flatMap((entry) => {
    const front = sheetFront(entry, lang);
    return front ? [[entry.plan.name, front] as const] : [];
  });
  return { words: wordsUnder(lang, ['sheet', 'task', 'shelf']), fronts: Object.fromEntries(fronts) };
}

/** The earlier weeks of each band that has any. */
export function earlierByBand(): Readonly<Record<string, EarlierWeeks>> {
  return Object.fromEntries(
    BANDS.flatMap((band) => {
      const { earlier } = sheetSource(band);
      return earlier && earlier.weeks.length > 0 ? [[band, earlier]] : [];
    }),
  );
}
