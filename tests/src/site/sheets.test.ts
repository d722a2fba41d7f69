// Sheets as a teacher or coordinator writes them: what is wrong is told with its line.
import { describe, expect, it } from 'vitest';
import { BANDS } from '../../../shared/quantity/grade.ts';
import { readPlan, sheetPlans } from '../../../src/site/sheets.ts';

const faultOf = (text: string): string => {
  try {
    readPlan('content/sheets/new.yaml', text);
  } catch (fault) {
    return (fault as Error).message;
  }
  return 'no fault';
};

describe('sheetPlans', () => {
  it('has a sheet for every band, the youngest first, each of six tasks or more', () => {
    const plans = sheetPlans();
    expect(plans.map(({ band }) => band)).toEqual(BANDS);
    for (const { tasks } of plans) expect(tasks.length).toBeGreaterThanOrEqual(6);
  });
});

describe('readPlan', () => {
  it('reads a sheet', () => {
    expect(readPlan('a.yaml', 'band: k-2\ntasks: [count-cups, fill-jars]')).toEqual({ band: 'k-2', tasks: ['count-cups', 'fill-jars'] });
  });

  it('names a task that is miswritten, by its line, with the nearest name', () => {
    expect(faultOf('band: k-2\ntasks:\n  - count-cups\n  - fil-jars\n')).toMatchInlineSnapshot(`"content/sheets/new.yaml:4  there is no task "fil-jars"; did you mean "fill-jars"?"`);
  });

  it('names a task that belongs to another band', () => {
    expect(faultOf('band: k-2\ntasks:\n  - mean-week\n')).toMatchInlineSnapshot(`"content/sheets/new.yaml:3  "mean-week" is a task for another grade band; k-2 has count-cups, more-or-less, join-milkings, picture-graph, fill-jars, order-cups, missing-part, two-days, add-days, even-odd, fill-up, kids-milk."`);
  });

  it('names a task that stands twice', () => {
    expect(faultOf('band: k-2\ntasks:\n  - count-cups\n  - count-cups\n')).toMatchInlineSnapshot(`"content/sheets/new.yaml:4  "count-cups" stands on this sheet twice; take one out."`);
  });

  it('names an unknown band, a missing list, and what is no YAML', () => {
    expect([faultOf('band: k-3\ntasks: [count-cups]\n'), faultOf('band: k-2\n'), faultOf('band: [k-2\n')]).toMatchInlineSnapshot(`
      [
        "content/sheets/new.yaml:1  "band": Invalid option: expected one of "k-2"|"3-5"|"6-8"|"9-12". A sheet has "band" (k-2, 3-5, 6-8, 9-12) and a list "tasks".",
        "content/sheets/new.yaml:1  "tasks": Invalid input: expected array, received undefined. A sheet has "band" (k-2, 3-5, 6-8, 9-12) and a list "tasks".",
        "content/sheets/new.yaml:2  this is no YAML: Flow sequence in block collection must be sufficiently indented and end with a ] at line 2, column 1:",
      ]
    `);
  });
}); // prettier-ignore
