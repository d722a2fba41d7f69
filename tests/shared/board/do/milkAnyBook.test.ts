// What there is to do with milk, months, feed and faces, over random books: it can be played, and says nothing unforeseen.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cupsAsk, cupsGroups, cupsRound, cupsSays, cupsVerdict } from '../../../../shared/board/do/cups.ts';
import { cupsPlan, MOST_FIGURES } from '../../../../shared/board/do/cupsPlan.ts';
import {
  clueText,
  doeOf,
  facesAsk,
  facesSays,
  facesShown,
  facesVerdict,
} from '../../../../shared/board/do/faces.ts';
import { facesPlan } from '../../../../shared/board/do/facesPlan.ts';
import { fillsOf, guessAsk, guessSays, guessShown, guessVerdict } from '../../../../shared/board/do/guess.ts';
import { guessPlan } from '../../../../shared/board/do/guessPlan.ts';
import { jarFills, pourRound, pourSays, pourSlots, pourVerdict } from '../../../../shared/board/do/pour.ts';
import { pourPlan } from '../../../../shared/board/do/pourPlan.ts';
import type { Told } from '../../../../shared/board/do/told.ts';
import { monthTold, nextTold, yearChoices, yearSays, yearVerdict } from '../../../../shared/board/do/year.ts';
import { yearLines } from '../../../../shared/board/do/yearLines.ts';
import { yearPlan } from '../../../../shared/board/do/yearPlan.ts';
import { say } from '../../../../shared/words/words.ts';
import { wordsOf } from '../../../../src/site/words.ts';
import { inputArb } from './doInput.ts';

const TURNS = [0, 1, 2, 5];
const RUNS = { numRuns: 120 };
const seedArb = fc.nat();
// NIST Handbook 44, Appendix C: 1 US gallon is 3785.411784 mL, and holds 16 cups of 8 fl oz.
const CUP_ML = 3785.411784 / 16;

function sound(plan: unknown, says: readonly string[]): Set<string> {
  expect(JSON.stringify(plan)).not.toMatch(/NaN|Infinity|undefined/);
  for (const text of says) expect(text).not.toMatch(/NaN|undefined|null|[{}]/);
  // A page's texts become sound at build time: few enough of them.
  expect(says.length).toBeLessThan(90);
  return new Set(says);
}

function choosable(choices: readonly (string | number)[], right: string | number): void {
  expect(choices).toContain(right);
  expect(new Set(choices).size).toBe(choices.length);
  expect(choices.length).toBeGreaterThan(1);
  const numbers = choices.filter((one) => typeof one === 'number');
  expect(numbers).toEqual(numbers.toSorted((a, b) => a - b));
}

const foreseen = (says: ReadonlySet<string>, told: Told) => {
  expect(says.has(told.text), told.text).toBe(true);
  if (told.more !== null) expect(says.has(told.more), told.more).toBe(true);
};

describe('over any book', () => {
  it('pouring: the jars that milk touches are those that a cup by cup count touches', () => {
    fc.assert(
      fc.property(inputArb, seedArb, (input, seed) => {
        const plan = pourPlan(input);
        if (!plan) return;
        const words = wordsOf(input.lang);
        const says = sound(plan, pourSays(words, plan));
        for (const turn of TURNS) {
          const { round, choices } = pourRound(plan, seed, turn);
          choosable(choices, round.needed);
          expect(says.has(say(words, 'barn.do.pour.ask', pourSlots(words, plan, round)))).toBe(true);
          for (const guess of choices) {
            const told = pourVerdict(words, plan, round, guess);
            foreseen(says, told);
            expect(told.right).toBe(guess === round.needed);
          }
          // Cup by cup: a jar is touched as soon as anything is in it.
          let jar = 1;
          let room = plan.jar_mL;
          for (let dip = 0; dip < round.dips; dip += 1) {
            let cup = plan.dip_mL;
            while (cup > room + 1e-6) {
              cup -= room;
              jar += 1;
              room = plan.jar_mL;
            }
            room -= cup;
          }
          expect(round.needed).toBe(jar);
          const fills = jarFills(plan, round.dips, choices.at(-1) ?? 0);
          expect(fills.filter((fill) => fill > 1e-9)).toHaveLength(round.needed);
          const milk = fills.reduce((sum, fill) => sum + fill, 0) * plan.jar_mL;
          expect(milk).toBeCloseTo(round.dips * plan.dip_mL, 6);
        }
      }),
      RUNS,
    );
  });

  it('guessing: the right pail is the one that the rows of that milking make the fuller', () => {
    fc.assert(
      fc.property(inputArb, seedArb, (input, seed) => {
        const plan = guessPlan(input);
        if (!plan) return;
        const words = wordsOf(input.lang);
        const says = sound(plan, guessSays(words, plan));
        for (const turn of TURNS) {
          const shown = guessShown(plan, seed, turn);
          choosable(shown.choices, shown.right);
          expect(says.has(guessAsk(words, plan, shown.round))).toBe(true);
          for (const guess of shown.choices) {
            const told = guessVerdict(words, plan, shown, guess);
            foreseen(says, told);
            expect(told.right).toBe(guess === shown.right);
          }
          for (const { id, parts } of shown.round.does) {
            const part_mL = plan.unit === 'cup' ? CUP_ML : 500;
            const rows = input.week.does.find((doe) => doe.id === id)?.milkings ?? [];
            const fits = ({ milking, amount_mL }: (typeof rows)[number]) =>
              milking === shown.round.milking && Math.abs(amount_mL / part_mL - parts) <= 0.5 + 1e-6;
            expect(rows.some(fits)).toBe(true);
            expect(fillsOf(plan, parts, shown.jars).every((fill) => fill >= 0 && fill <= 1)).toBe(true);
          }
          const [one, two] = shown.round.does;
          if (two) expect(shown.right === one.id).toBe(one.parts > two.parts);
        }
      }),
      RUNS,
    );
  });

  it('cups: one cup after another is taken out until none is full', () => {
    fc.assert(
      fc.property(inputArb, seedArb, (input, seed) => {
        const plan = cupsPlan(input);
        if (!plan) return;
        const words = wordsOf(input.lang);
        const says = sound(plan, cupsSays(words, plan));
        for (const turn of TURNS) {
          const { round, choices } = cupsRound(plan, seed, turn);
          choosable(choices, round.children);
          expect(says.has(cupsAsk(words, plan, round))).toBe(true);
          for (const guess of choices) foreseen(says, cupsVerdict(words, plan, round, guess));
          const milk = round.n * (plan.unit === 'cup' ? CUP_ML : 1000);
          expect(round.children * CUP_ML).toBeLessThanOrEqual(milk * (1 + 1e-9));
          expect((round.children + 1) * CUP_ML).toBeGreaterThan(milk * (1 - 1e-9));
          const groups = cupsGroups(round);
          expect(groups.reduce((sum, group) => sum + group, 0)).toBe(round.children);
          expect(groups.length).toBeLessThanOrEqual(4);
          expect(Math.ceil(round.children / round.each)).toBeLessThanOrEqual(MOST_FIGURES);
          const drawn = round.fills.reduce((sum, fill) => sum + fill, 0) * input.jar_mL * round.jarEach;
          expect(Math.abs(drawn / milk - 1)).toBeLessThan(1e-9);
        }
      }),
      RUNS,
    );
  });

  it('the year: no other month that can be guessed has nearly as much milk', () => {
    fc.assert(
      fc.property(inputArb, seedArb, (input, seed) => {
        const plan = yearPlan(input);
        if (!plan) return;
        const words = wordsOf(input.lang);
        const says = sound(plan, yearSays(words, plan));
        const choices = yearChoices(plan, seed);
        choosable(choices, plan.best);
        const total = (place: number) => input.year.months[place]?.total_mL ?? NaN;
        for (const place of choices)
          if (place !== plan.best) expect(total(place)).toBeLessThan(0.9 * total(plan.best) + 1e-6);
        for (const place of choices) foreseen(says, yearVerdict(words, plan, place));
        for (const place of plan.months.keys()) foreseen(says, monthTold(words, plan, place));
        if (plan.next) foreseen(says, nextTold(words, plan.next));
        for (const [place, { share, jars, why }] of plan.months.entries()) {
          expect(share).toBeGreaterThanOrEqual(0);
          expect(share).toBeLessThanOrEqual(1);
          expect(jars * input.jar_mL).toBeCloseTo(total(place), 6);
          // A blank month is not told as one without milk.
          if (why === 'blank') expect(input.year.months[place]?.rows).toBe(0);
        }
        for (const { area } of yearLines(plan.months)) expect(area).not.toMatch(/NaN/);
      }),
      RUNS,
    );
  });

  it('faces: what is said of a doe holds for her and for no other who stands beside her', () => {
    fc.assert(
      fc.property(inputArb, seedArb, (input, seed) => {
        const plan = facesPlan(input);
        if (!plan) return;
        const words = wordsOf(input.lang);
        const says = sound(plan, facesSays(words, plan));
        for (const turn of TURNS) {
          const shown = facesShown(plan, seed, turn);
          choosable(shown.kind === 'who' ? shown.choices : [...shown.choices], shown.right);
          expect(says.has(facesAsk(words, shown))).toBe(true);
          for (const guess of shown.choices) foreseen(says, facesVerdict(words, plan, shown, guess));
          if (shown.kind === 'age') continue;
          const fits = (id: string) => {
            const { look, years } = doeOf(plan, id);
            const of = { ...look, coat: look.coat.base, pattern: look.coat.pattern, years };
            return shown.doe.clues.every(({ trait, value }) => {
              const own = of[trait];
              return (typeof own === 'boolean' ? (own ? 'yes' : 'no') : own) === value;
            });
          };
          expect(shown.choices.filter((id) => fits(String(id)))).toEqual([shown.right]);
          for (const clue of shown.doe.clues) expect(says.has(clueText(words, clue))).toBe(true);
        }
      }),
      RUNS,
    );
  });
});
