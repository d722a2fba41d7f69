// The parts of the author's guide that follow from the code: tasks, figures and what a faulty file is answered with.
import { join } from 'node:path';
import { figuresOf } from '../../shared/herd/figures.ts';
import { openLedger } from '../../shared/herd/ledger.ts';
import { weekView, type WeekView } from '../../shared/herd/week.ts';
import { BANDS, type Band } from '../../shared/quantity/grade.ts';
import { taskContext } from '../../shared/tasks/context.ts';
import { kindsOf } from '../../shared/tasks/kinds.ts';
import { firstGrade, topGrade } from '../../shared/tasks/standards.ts';
import { say } from '../../shared/words/words.ts';
import { tellContentFaults } from '../../src/content/contentFault.ts';
import { readSheetFile } from '../../src/content/sheetFile.ts';
import { readFarm } from '../../src/farm/readFarm.ts';
import { wordsOf } from '../../src/site/words.ts';

const words = wordsOf('en');
const demo = readFarm(join('content', 'farm'), { asOf: undefined, now_ms: 0 });
if (!demo.ok) throw new Error('the demo farm has faults');
const { book, asOf } = demo;
const { figures } = figuresOf(book, openLedger(book, asOf));
/** Ids of the figures that a sheet may name: those of the herd. */
export const FIGURE_IDS = Object.keys(figures);

/** A block of the guide by its mark: `<!-- example en -->` and the fenced text after it. */
export function blockOf(guide: string, mark: string): string {
  const block = new RegExp(`<!-- ${mark} -->\\s*\`\`\`\\w+\\n([\\s\\S]*?)\`\`\``).exec(guide)?.[1];
  if (block === undefined) throw new Error(`The guide has no block "${mark}".`);
  return block;
}

/** The guide with every part renewed that follows from the code. */
export function renewGuide(guide: string): string {
  const parts = {
    figures: figureTable(),
    tasks: BANDS.map(taskTable).join('\n\n'),
    faults: `\`\`\`text\n${faultsOf(blockOf(guide, 'broken'))}\n\`\`\``,
  };
  return Object.entries(parts).reduce((text, [mark, part]) => {
    const place = new RegExp(`(<!-- ${mark} -->)[\\s\\S]*?(<!-- /${mark} -->)`);
    if (!place.test(text)) throw new Error(`The guide has no part "${mark}".`);
    return text.replace(place, (_, opens: string, ends: string) => `${opens}\n\n${part}\n\n${ends}`);
  }, guide);
}

function faultsOf(written: string): string {
  const reading = readSheetFile('content/sheets/en/my-first-sheet.md', 'my-first-sheet', written, FIGURE_IDS);
  if (reading.ok) throw new Error('The broken example of the guide has no fault.');
  return tellContentFaults(reading.faults);
}

function table(rows: readonly (readonly string[])[]): string {
  const [head = [], ...others] = rows;
  return [head, head.map(() => '---'), ...others].map((row) => `| ${row.join(' | ')} |`).join('\n');
}

const emptyWeek: WeekView = weekView({ ...book, rows: [], does: [], kiddings: [] }, openLedger({ ...book, rows: [], does: [], kiddings: [] }, asOf)); // prettier-ignore

function taskTable(band: Band): string {
  const grade = topGrade(band);
  const nothing = taskContext({ week: emptyWeek, units: 'us', jar_mL: 946.352946 }, band, '', grade);
  const rows = kindsOf(band).map((kind) => {
    const from = Math.min(...kind.standards.map(firstGrade));
    return [
      `\`${kind.name}\``,
      say(words, `sheet.kind.${kind.name}`),
      from === 0 ? 'K' : String(from),
      kind.fits(nothing) === true ? 'yes' : '',
    ];
  });
  return `### ${say(words, `sheet.grades.${band}`)}\n\n${table([['task', 'what the child meets', 'from grade', 'without milk'], ...rows])}`; // prettier-ignore
}

function figureTable(): string {
  const ids = FIGURE_IDS.filter((id) => id.startsWith('herd.'));
  const nameOf = (id: string) => say(words, `proof.kind.${id.replaceAll('.', '-')}.name`);
  return table([['write', 'what it is'], ...ids.map((id) => [`\`{${id}}\``, nameOf(id)])]);
}
