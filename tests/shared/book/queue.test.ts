// A phone's entries on their way: any order of taps, crashes, lost answers and repeats, against a plain model of a desk.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  dealtWith, ended, EMPTY_QUEUE, forgettable, laidOver, lastTurn, nextPost, refusedOf, sent, settled, stageOf, waitBefore_ms, waitingMark, waitingOf, type Queue, type Queued,
} from '../../../shared/book/queue.ts'; // prettier-ignore
import type { EntryAnswer } from '../../../shared/book/types.ts';
import { add, bookOf, DATE, entryOf, fail, Phone, PlainDesk, put, rowOf } from '../../support/phoneModel.ts';

const queueOf = (all: readonly Queued[]): Queue => ({ ...EMPTY_QUEUE, all });
const keptAnswer = (id: string, mark: string): EntryAnswer => ({ id, kept: true, mark });

describe('one entry', () => {
  it('goes from waiting to sent to kept, and stays kept whatever comes again', () => {
    let queue = queueOf(add([], entryOf('a')));
    expect(stageOf(queue, 'a')).toBe('waiting');
    const post = nextPost(queue, 9);
    queue = sent(queue, post);
    expect([stageOf(queue, 'a'), nextPost(queue, 9)]).toEqual(['sent', []]);
    const answers = [keptAnswer('a', 'm1')];
    queue = ended(queue, post, answers);
    queue = { ...queue, all: put(queue.all, settled(queue.all, answers, { now_ms: 5, turn: 1 })) };
    expect([stageOf(queue, 'a'), waitingOf(queue), nextPost(queue, 9)]).toEqual(['kept', [], []]);
    const late: EntryAnswer[] = [{ id: 'a', kept: false, why: 'too much' }];
    expect(settled(queue.all, late, { now_ms: 6, turn: 2 })).toEqual([]);
    expect(stageOf(queue, 'never')).toBeNull();
  });

  it('waits again where the answer was lost, behind those that were sent less often', () => {
    let queue = queueOf(add(add([], entryOf('a')), entryOf('b', { doe: 'fern' })));
    const post = nextPost(queue, 1);
    queue = ended(sent(queue, post), post, []);
    expect(nextPost(queue, 9).map(({ id }) => id)).toEqual(['b', 'a']);
  });

  it('that was refused is shown with its reason until somebody has dealt with it or entered the milking anew', () => {
    const refuse = (all: Queued[]) =>
      put(all, settled(all, [{ id: 'a', kept: false, why: 'too much' }], { now_ms: 0, turn: 1 }));
    const all = refuse(add([], entryOf('a', { amount: '90' })));
    expect(refusedOf({ all })).toEqual([{ entry: entryOf('a', { amount: '90' }), why: 'too much' }]);
    expect(laidOver(bookOf([]), all, 0).rows).toEqual([]);
    expect(forgettable(all, 0)).toEqual([]);
    const read = all.map(dealtWith);
    expect([refusedOf({ all: read }), forgettable(read, 0)]).toEqual([[], read]);
    expect(refusedOf({ all: add(all, entryOf('b', { doe: 'fern' })) })).toHaveLength(1);
    expect(refusedOf({ all: add(all, entryOf('b')) })).toEqual([]);
  });
});

describe('a second correction made without a network', () => {
  const twice = add(
    add([], entryOf('a', { saw: 'm0' })),
    entryOf('b', { saw: waitingMark('a'), amount: '8' }),
  );

  it('goes only once the first has its answer, and names the row that it made', () => {
    expect(nextPost(queueOf(twice), 9).map(({ id, saw }) => [id, saw])).toEqual([['a', 'm0']]);
    const kept = put(twice, settled(twice, [keptAnswer('a', 'm1')], { now_ms: 0, turn: 1 }));
    expect(nextPost(queueOf(kept), 9).map(({ id, saw }) => [id, saw])).toEqual([['b', 'm1']]);
    // The first one's mark is needed as long as the second waits, however old it is.
    expect(forgettable(kept, 1e12)).toEqual([]);
  });

  it('names what the first had seen where the first is refused', () => {
    const answers: EntryAnswer[] = [{ id: 'a', kept: false, why: 'too much' }];
    const refused = put(twice, settled(twice, answers, { now_ms: 0, turn: 1 }));
    expect(nextPost(queueOf(refused), 9).map(({ id, saw }) => [id, saw])).toEqual([['b', 'm0']]);
  });

  it('sees what waits to be struck out, though no row is shown', () => {
    const struck = add(add([], entryOf('a', { saw: 'm0', amount: null })), entryOf('b', { saw: null }));
    expect(laidOver(bookOf([rowOf('clover', 'm0')]), struck.slice(0, 1), 0).rows).toEqual([]);
    const kept = put(struck, settled(struck, [keptAnswer('a', 'm1')], { now_ms: 0, turn: 1 }));
    expect(nextPost(queueOf(kept), 9).map(({ id, saw }) => [id, saw])).toEqual([['b', 'm1']]);
  });
});

describe('the book that is shown', () => {
  it('lays what waits over what the desk said, in its place', () => {
    const state = bookOf([rowOf('fern', 'f'), rowOf('clover', 'm0'), rowOf('dot', 'd')]);
    const all = add([], entryOf('a', { saw: 'm0', amount: '7 1/2', use: 'withheld' }));
    const { rows } = laidOver(state, all, 0);
    expect(rows.map(({ doe, waiting }) => [doe, waiting])).toEqual([['fern', false], ['clover', true], ['dot', false]]); // prettier-ignore
    expect(rows[1]).toMatchObject({
      amount: { num: 15, den: 2, unit: 'cup' },
      use: 'withheld',
      corrects: 1,
      mark: waitingMark('a'),
    });
  });

  it('keeps showing what was taken until a book comes that was asked for afterwards', () => {
    const all = put(add([], entryOf('a')), settled(add([], entryOf('a')), [keptAnswer('a', 'm1')], { now_ms: 0, turn: 4 })); // prettier-ignore
    expect(laidOver(bookOf([]), all, 3).rows).toMatchObject([{ mark: 'm1', waiting: false }]);
    expect(laidOver(bookOf([]), all, 4).rows).toEqual([]);
    expect([lastTurn(all, 0), lastTurn(all, 9), lastTurn([], 2)]).toEqual([4, 9, 2]);
  });

  it('shows no clash any longer that an entry which waits here settles', () => {
    const amounts = ['1000 9/1 cup kept', '2000 8/1 cup kept'].map((mark) => ({ amount: null, use: 'kept' as const, mark })); // prettier-ignore
    const clash = { doe: 'clover', date: DATE, milking: 'am' as const, amounts };
    const state = bookOf([rowOf('clover', '2000 8/1 cup kept', 8)], { clashes: [clash] });
    const settling = add([], entryOf('a', { saw: '2000 8/1 cup kept' }));
    expect(laidOver(state, settling, 0).clashes).toEqual([]);
    expect(laidOver(state, add([], entryOf('a', { saw: '1000 9/1 cup kept' })), 0).clashes).toEqual([clash]);
    expect(laidOver(state, [], 0).clashes).toEqual([clash]);
  });
});

describe('the time to the next try', () => {
  it('doubles from a second, never passes 20, and is never nothing', () => {
    expect([1, 2, 3, 4, 5, 6, 60, 1e6].map((n) => waitBefore_ms(n, 1))).toEqual([1000, 2000, 4000, 8000, 16000, 20000, 20000, 20000]); // prettier-ignore
    fc.assert(
      fc.property(fc.nat(), fc.double({ min: 0, max: 1, noNaN: true }), (failures, chance) => {
        const wait_ms = waitBefore_ms(failures, chance);
        expect(wait_ms).toBeGreaterThanOrEqual(750);
        expect(wait_ms).toBeLessThanOrEqual(20_000);
      }),
    );
  });
});

const DOES = ['clover', 'fern', 'dot'];
const step = fc.oneof(
  { weight: 4, arbitrary: fc.record({ act: fc.constant('enter' as const), doe: fc.nat(2), amount: fc.constantFrom('5', '6', '7', '8', '99') }) },
  { weight: 3, arbitrary: fc.record({ act: fc.constant('send' as const), most: fc.integer({ min: 1, max: 4 }), isHeard: fc.boolean() }) },
  { weight: 3, arbitrary: fc.record({ act: fc.constant('hear' as const), which: fc.nat(9), isLost: fc.boolean() }) },
  fc.record({ act: fc.constantFrom('ask' as const, 'crash' as const) }),
); // prettier-ignore

describe('any order of taps, crashes, lost answers and repeats', () => {
  it('ends with every entry written exactly once, or refused and shown', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.nat(1), step), { maxLength: 60 }), (steps) => {
        const desk = new PlainDesk();
        const phones = [new Phone(desk), new Phone(desk)] as const;
        const made: { id: string; phone: Phone; amount: string }[] = [];
        for (const [whose, one] of steps) {
          const phone = phones[whose as 0 | 1];
          if (one.act === 'enter') {
            const id = `${whose}-${made.length}`;
            const doe = DOES[one.doe] ?? fail('doe');
            phone.enter(id, doe, one.amount);
            made.push({ id, phone, amount: one.amount });
            // Whatever happened before, the milker sees what she has just entered.
            const row = phone.shown().rows.find((shown) => shown.doe === doe);
            expect([row?.amount.num, row?.waiting]).toEqual([Number(one.amount), true]);
          } else if (one.act === 'send') phone.send(one.most, one.isHeard);
          else if (one.act === 'hear') phone.hear(one.which, one.isLost);
          else phone[one.act]();
          // Nothing leaves the queue without an answer.
          for (const { id, phone: own } of made) expect(stageOf(own.queue(), id)).not.toBeNull();
        }
        for (const phone of phones) phone.drain();
        for (const phone of phones) {
          phone.ask();
          phone.hear(phone.air.length - 1, false);
        }
        const written = desk.rows.map(({ id }) => id).sort();
        const good = made.filter(({ amount }) => amount !== '99');
        expect(written).toEqual(good.map(({ id }) => id).sort());
        for (const { id, phone, amount } of made) {
          expect(stageOf(phone.queue(), id)).toBe(amount === '99' ? 'refused' : 'kept');
          const dealt = phone.all.find(({ entry }) => entry.id === id)?.outcome;
          if (amount === '99' && dealt?.kept === false && !dealt.dealt)
            expect(refusedOf(phone.queue()).some(({ entry }) => entry.id === id)).toBe(true);
        }
        // Both phones agree with the desk, and nothing is said to wait.
        for (const phone of phones)
          expect(phone.shown().rows).toEqual(desk.book().rows.map((row) => ({ ...row, waiting: false })));
      }),
      { numRuns: 400 },
    );
  });

  it('never makes a phone a stranger to its own entries', () => {
    fc.assert(
      fc.property(fc.array(step, { maxLength: 60 }), (steps) => {
        const phone = new Phone(new PlainDesk());
        let made = 0;
        for (const one of steps) {
          if (one.act === 'enter') phone.enter(`e${(made += 1)}`, DOES[one.doe] ?? fail('doe'), one.amount);
          else if (one.act === 'send') phone.send(one.most, one.isHeard);
          else if (one.act === 'hear') phone.hear(one.which, one.isLost);
          else phone[one.act]();
        }
        phone.drain();
        expect(phone.desk.strangers).toEqual([]);
      }),
      { numRuns: 400 },
    );
  });
});
