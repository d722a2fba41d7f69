// A lesson laid out for a Word document, with text of every sort in it.
import type { WordPlan } from '../../src/components/bench/wordFile.ts';
import { wordsOf } from '../../src/site/words.ts';
import { spansOf } from '../../shared/lesson/clock.ts';
import { composeLesson } from '../../shared/lesson/compose.ts';
import { planHead } from '../../shared/lesson/planHead.ts';
import { fullText, planTitle, totalOf } from '../../shared/lesson/planText.ts';
import { poolFor } from '../../shared/lesson/pool.ts';
import { lessonOf, wishOf } from './lessonPool.ts';

const paragraph = (text: string) => ({ is: 'paragraph' as const, runs: [{ text }] });

/** A lesson of three steps that begins at half past nine. */
export function wordPlan(lang: string, paper: WordPlan['paper'] = 'letter'): WordPlan {
  const words = wordsOf(lang);
  const lesson = lessonOf(
    'pail',
    {
      hello: { kind: 'open', minutes: 5, blocks: [paragraph('What is in the pail? <Milk> & more.')] },
      count: {
        kind: 'sheet',
        sheet: 'cups-we-can-count',
        minutes: 15,
        blocks: [
          { is: 'paragraph', runs: [{ text: 'Count ' }, { text: 'every', strong: true }, { text: ' cup. ' }, { text: 'Slowly.', emphasis: true }] },
          { is: 'list', ordered: true, lines: [[{ text: 'Fill a jar.' }], [{ text: 'Count again.' }]] },
          { is: 'list', ordered: false, lines: [[{ text: 'A jar.' }], [{ text: 'A cup.' }]] },
          { is: 'note', runs: [{ text: 'Four cups fill a quart.' }] },
        ],
      }, // prettier-ignore
      end: { kind: 'close', minutes: 5, blocks: [paragraph('Tell a friend: «ñandú», “milk”.')] },
    },
    {
      standards: ['1-LS1-2', 'K.CC.B.5'],
      cautions: ['wash', 'raw-milk'],
      words: [{ word: 'pail', means: 'a bucket' }],
      materials: [{ what: 'paper cup', count: 2, per: 'child', groupOf: null }],
    },
  );
  const wish = wishOf({ minutes: 30, children: 21 });
  const steps = composeLesson(poolFor([lesson], wish.grade), wish);
  const total = totalOf(steps);
  return {
    title: planTitle(words, wish, total),
    full: fullText(words, total, wish.minutes),
    steps,
    spans: spansOf(steps.map(({ minutes }) => minutes), 570), // prettier-ignore
    wish,
    head: planHead(steps, wish.children, wish.place),
    washMissing: false,
    sheets: { 'cups-we-can-count': { title: 'Cups we can count', href: '/sheets/cups-we-can-count/' } },
    paper,
    words,
    farm: 'Hobnail & Hill',
  };
}
