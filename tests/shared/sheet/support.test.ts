// Which standards a sheet may support, and from which grade it has all of its own tasks.
import { describe, expect, it } from 'vitest';
import { fullFrom, standardsOf } from '../../../shared/sheet/support.ts';

describe('standardsOf', () => {
  it('names those of the tasks in order, then those of the head, each once', () => {
    const plan = { tasks: ['more-or-less', 'count-cups', 'two-days'], standards: ['K.CC.B.5', 'W.2.8'] };
    expect(standardsOf(plan)).toEqual(['K.CC.C.6', '1.OA.A.1', 'K.CC.B.5', 'W.2.8']);
  });

  it('throws for a task that is none', () => {
    expect(() => standardsOf({ tasks: ['count-pails'], standards: [] })).toThrow('count-pails');
  });
});

describe('fullFrom', () => {
  it('is the oldest of the grades from which its tasks may be asked', () => {
    expect(fullFrom({ band: 'k-2', tasks: ['count-cups', 'more-or-less'] })).toBe(0);
    // Even and odd are asked for in grade 2 (2.OA.C.3).
    expect(fullFrom({ band: 'k-2', tasks: ['count-cups', 'even-odd'] })).toBe(2);
    expect(fullFrom({ band: '3-5', tasks: ['scaled-bars', 'larger-to-smaller'] })).toBe(4);
    expect(fullFrom({ band: '9-12', tasks: ['line-of-fit'] })).toBe(9);
  });
});
