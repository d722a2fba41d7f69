// Where this week cannot carry a task: the last week that can, told by its date, or another task of the same standard.
import { describe, expect, it } from 'vitest';
import { openLedger } from '../../../shared/herd/ledger.ts';
import { weekView } from '../../../shared/herd/week.ts';
import { BANDS } from '../../../shared/quantity/grade.ts';
import { earlierWeeks } from '../../../shared/sheet/earlierWeeks.ts';
import { makeSheet } from '../../../shared/sheet/sheet.ts';
import { taskContext, type SheetSource } from '../../../shared/tasks/context.ts';
import { kindNamed, kindsOf } from '../../../shared/tasks/kinds.ts';
import { GRADES_OF } from '../../../shared/tasks/standards.ts';
import { bookOf, day } from '../../support/bookOf.ts';
import { isoDate } from '../../../shared/calendar/day.ts';

const NAMES = ['ada', 'bea', 'cleo'];
// Four weeks of three does to May 21; in the week to May 7 one doe's milk was withheld, in the last week only one doe gave.
const rows = Array.from({ length: 28 }, (_, index) => isoDate(day('2026-05-21') - 27 + index)).flatMap(
  (date, at) =>
    NAMES.flatMap((doe, which) =>
      ['am', 'pm'].flatMap((milking, half) => {
        const quarters = 12 + ((at * 5 + which * 7 + half * 3) % 11);
        if (date > '2026-05-14' && doe !== 'ada') return [];
        const use = doe === 'bea' && date >= '2026-05-01' && date <= '2026-05-04' ? ' withheld' : '';
        return [`${date} ${milking} ${doe} ${quarters / 4} cup${use}`];
      }),
    ),
);
const kiddings = [
  'ada 2026-02-01 weaned 2026-03-01',
  'bea 2026-02-01 weaned 2026-03-01 dry 2026-05-15',
  'cleo 2026-02-01 weaned 2026-03-01 dry 2026-05-15',
];
const book = bookOf(kiddings, rows);
const ledger = openLedger(book, day('2026-05-21'));
const source: SheetSource = {
  week: weekView(book, ledger),
  units: 'us',
  jar_mL: 946.352946,
  milkings: { am: '06:30', pm: '17:30' },
};
const request = (band: (typeof BANDS)[number], tasks: readonly string[]) => ({
  ...source,
  earlier: earlierWeeks(book, ledger, source, band),
  name: 'a-sheet',
  band,
  seed: 'fern',
  tasks,
});

describe('earlierWeeks', () => {
  it('keeps, for every kind and grade, the newest week that carries it', () => {
    for (const band of BANDS) {
      const { weeks, carry } = earlierWeeks(book, ledger, source, band);
      for (const kind of kindsOf(band)) {
        for (const grade of GRADES_OF[band]) {
          // The slow way: every week of the book opened on its own last day, from the newest back.
          const ends = ['2026-05-21', '2026-05-14', '2026-05-07', '2026-04-30'];
          const able = ends.find(
            (end) =>
              kind.fits(
                taskContext({ ...source, week: weekView(book, openLedger(book, day(end))) }, band, '', grade),
              ) === true,
          );
          const place = carry[`${kind.name}@${grade}`];
          const kept = place === undefined ? undefined : weeks[place]?.window?.to;
          expect(kept, `${kind.name}@${grade}`).toBe(able === '2026-05-21' ? undefined : able);
        }
      }
    }
  });

  it('finds none in an empty book, nor in one without does', () => {
    for (const empty of [bookOf(['ada 2026-02-01']), bookOf([])]) {
      const open = openLedger(empty, day('2026-05-21'));
      for (const band of BANDS)
        expect(earlierWeeks(empty, open, { ...source, week: weekView(empty, open) }, band)).toEqual({
          weeks: [],
          carry: {},
        });
    }
  });
});

describe('makeSheet', () => {
  it('takes what this week lacks from the last week that has it, and says which', () => {
    const sheet = makeSheet(request('6-8', ['kept-percent', 'mean-week']));
    expect(sheet.tasks.map(({ kind, earlier }) => [kind, earlier?.to ?? null])).toEqual([
      ['kept-percent', '2026-05-07'],
      ['mean-week', null],
    ]);
    expect(sheet.lacks).toEqual([]);
  });

  it('gives the place to a task of the same standard where no week carries it', () => {
    let stoodIn = 0;
    for (const band of BANDS)
      for (const kind of kindsOf(band)) {
        const sheet = makeSheet({ ...request(band, [kind.name]), earlier: undefined });
        const [task] = sheet.tasks;
        if (!task || task.kind === kind.name) continue;
        const now = (name: string) => kindNamed(name)?.fits(taskContext(source, band, '', sheet.grade)) === true;
        const sameStandard = kindsOf(band).filter(({ name, standards }) => name !== kind.name && standards.some((code) => kind.standards.includes(code)) && now(name));
        if (sameStandard.length === 0) continue;
        expect(sameStandard.map(({ name }) => name), kind.name).toContain(task.kind);
        stoodIn += 1;
      }
    expect(stoodIn).toBeGreaterThan(0);
  });

  it('keeps to a grade: a task above it gives its place to one that is right', () => {
    const asked = ['even-odd', 'add-days', 'picture-graph', 'count-cups'];
    const [kindergarten, second] = ([0, 2] as const).map((grade) => makeSheet({ ...request('k-2', asked), grade }));
    expect(second?.tasks.map(({ kind }) => kind)).toEqual(asked);
    expect(kindergarten?.tasks.map(({ kind }) => kind)).not.toContain('even-odd');
    expect(kindergarten?.tasks.length).toBe(4);
  });
}); // prettier-ignore
