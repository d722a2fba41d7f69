// The key of a class: every answer once, either shared or at its copy.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { acceptedInShort, classKey, shortAnswer } from '../../../shared/sheet/classKey.ts';
import { classSet } from '../../../shared/sheet/classSet.ts';
import { msg, text } from '../../../shared/sheet/message.ts';
import { tellText } from '../../../shared/sheet/tell.ts';
import { wordsOf } from '../../../src/site/words.ts';
import type { Ask } from '../../../shared/tasks/task.ts';
import { requestArb } from '../tasks/randomWeek.ts';

const words = wordsOf('en');

describe('classKey', () => {
  it('tells every answer of every copy, those that all share once', () => {
    fc.assert(
      fc.property(requestArb, fc.integer({ min: 1, max: 4 }), (request, count) => {
        const copies = classSet(request, 'fern', count);
        const key = classKey(copies, words);
        expect(key.copies.map(({ code }) => code)).toEqual(copies.map(({ code }) => code));
        copies.forEach((copy, index) => {
          const own = key.copies[index]?.tasks ?? [];
          copy.tasks.forEach((task, place) => {
            const told = [...own, ...key.shared]
              .filter(({ number }) => number === place + 1)
              .flatMap(({ lines }) => lines.map(({ answer }) => tellText(words, answer)))
              .sort();
            expect(told).toEqual(task.asks.map((ask) => tellText(words, shortAnswer(ask))).sort());
            // Every other form that is right stands somewhere too: at the copy, or once for all.
            const also = [
              ...[...own, ...key.shared]
                .filter(({ number }) => number === place + 1)
                .flatMap(({ lines }) => lines.flatMap((line) => line.also)),
              ...key.accepted.filter(({ number }) => number === place + 1).flatMap((one) => one.also),
            ].map((message) => tellText(words, message));
            for (const ask of task.asks)
              for (const one of acceptedInShort(ask)) expect(also).toContain(tellText(words, one));
          });
        });
        if (count === 1) expect(key.shared).toEqual([]);
      }),
      { numRuns: 40 },
    );
  });
});

describe('shortAnswer', () => {
  const answer = msg('sheet.answer-name', { name: text('heno, agua y aire') });

  it('tells what is written into a figure by its parts in order', () => {
    const values = ['LL', 'Ll'];
    const ask: Ask = { prompt: answer, work: { is: 'picture' }, answer, values, accepted: [], steps: [] };
    expect(tellText(words, shortAnswer(ask))).toBe('LL, Ll');
  });

  it('tells what is ringed by its words, not by its names in the drawing', () => {
    const picture = {
      is: 'picks' as const,
      picks: [{ thing: 'hay' as const, words: msg('task.goat-needs.thing-hay'), right: true }],
    };
    const ask: Ask = {
      prompt: answer,
      work: { is: 'picture' },
      answer,
      values: ['hay', 'water', 'air'],
      accepted: [],
      steps: [],
      picture,
    };
    expect(tellText(words, shortAnswer(ask))).toBe('heno, agua y aire');
  });
});
