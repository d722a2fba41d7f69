// All sheets of content/sheets, one folder a language, held against each other.
import { readFileSync } from 'node:fs';
import { BANDS } from '../../shared/quantity/grade.ts';
import { WHENS, type SheetPlan } from '../../shared/sheet/plan.ts';
import type { ContentFault, ContentNotice } from './contentFault.ts';
import { contentFiles } from './contentFiles.ts';
import { readSheetFile, type SheetFile } from './sheetFile.ts';

/** One sheet in all languages in which it is written. */
export interface SheetEntry {
  readonly plan: SheetPlan;
  readonly inLanguage: Readonly<Record<string, SheetFile>>;
}

/** The sheets in the order of bands and of a visit, with everything that is wrong. */
export interface SheetShelf {
  readonly sheets: readonly SheetEntry[];
  readonly faults: readonly ContentFault[];
  readonly notices: readonly ContentNotice[];
}

/** Reads `dir/LANG/NAME.md` for each language. `figures` are the ids that a text may name. */
export function readSheetFiles(
  dir: string,
  languages: readonly string[],
  figures: readonly string[],
): SheetShelf {
  const faults: ContentFault[] = [];
  const notices: ContentNotice[] = [];
  const found = new Map<string, Record<string, SheetFile>>();
  for (const lang of languages) {
    const { files, faults: misnamed } = contentFiles('sheet', dir, lang);
    faults.push(...misnamed);
    for (const { name, path, told } of files) {
      const reading = readSheetFile(told, name, readFileSync(path, 'utf8'), figures);
      if (!reading.ok) faults.push(...reading.faults);
      else found.set(name, { ...found.get(name), [lang]: reading.sheet });
    }
  }
  const sheets = [...found.values()].map((inLanguage): SheetEntry => {
    const [first, ...others] = Object.values(inLanguage) as [SheetFile, ...SheetFile[]];
    for (const other of others) faults.push(...differences(first, other));
    for (const lang of languages)
      if (!(lang in inLanguage))
        notices.push({
          file: first.file,
          text: `This sheet is not written in "${lang}" yet, so the pages in it leave it out.`,
        });
    return { plan: first.plan, inLanguage };
  });
  const order = ({ plan }: SheetEntry) => BANDS.indexOf(plan.band) * WHENS.length + WHENS.indexOf(plan.when);
  sheets.sort((a, b) => order(a) - order(b) || a.plan.name.localeCompare(b.plan.name));
  return { sheets, faults, notices };
}

/** Where the same sheet says one thing in one language and another in the other. */
function differences(first: SheetFile, other: SheetFile): ContentFault[] {
  const fault = (line: number, text: string): ContentFault => ({
    file: other.file,
    line,
    column: null,
    text,
  });
  const fields = (['band', 'when', 'minutes', 'standards'] as const).filter(
    (field) => String(first.plan[field]) !== String(other.plan[field]),
  );
  const faults = fields.map((field) =>
    fault(
      1,
      `"${field}" is ${shown(other.plan[field])} here and ${shown(first.plan[field])} in ${first.file}; both languages need the same.`,
    ),
  );
  const [ours, theirs] = [other.plan.tasks, first.plan.tasks];
  const at = Math.max(ours.length, theirs.length);
  for (let place = 0; place < at; place += 1) {
    if (ours[place] === theirs[place]) continue;
    const here = ours[place]
      ? `task ${place + 1} is "${ours[place]}" here`
      : `task ${place + 1} is missing here`;
    const there = theirs[place] ? `"${theirs[place]}" in ${first.file}` : `there is none in ${first.file}`;
    faults.push(
      fault(
        other.taskLines[place] ?? other.taskLines.at(-1) ?? 1,
        `${here} and ${there}; both languages need the same tasks in the same order.`,
      ),
    );
    break;
  }
  return faults;
}

function shown(value: string | number | readonly string[]): string {
  if (typeof value !== 'object') return String(value);
  return value.length > 0 ? value.join(', ') : 'empty';
}
