// The chart of a trip's day, read back from its markup: every party's slots where the plan has them, and the same in the table.
import { render } from 'svelte/server';
import type { Component } from 'svelte';
import { describe, expect, it } from 'vitest';
import { planTrip } from '../../../shared/trip/planTrip.ts';
import { shortClock } from '../../../shared/trip/papers/tell.ts';
import { slotText } from '../../../shared/trip/tripText.ts';
import type { DayPlan, TripWish } from '../../../shared/trip/types.ts';
import DayChart from '../../../src/components/trip/DayChart.svelte';
import FarmLoop from '../../../src/components/trip/FarmLoop.svelte';
import PartyDay from '../../../src/components/trip/PartyDay.svelte';
import { wordsOf } from '../../../src/site/words.ts';
import { TEST_FARM, TEST_GROUND, TEST_SIGNS, testWish } from '../../support/tripFarm.ts';
import { marksIn, withClass, type Mark } from '../drawn.ts';

function dayOf(change: Partial<TripWish> = {}): DayPlan {
  const plan = planTrip(testWish(change), TEST_FARM, TEST_GROUND);
  if (!plan.ok) throw new Error(JSON.stringify(plan.whys));
  return plan.day;
}

const markup = (part: unknown, props: Record<string, unknown>) =>
  render(part as Component<typeof props>, { props }).body.replace(/<!--.*?-->/gs, '');
const tongueOf = (lang: string) => ({ words: wordsOf(lang), stations: TEST_SIGNS });
const chartOf = (day: DayPlan, lang = 'en') =>
  marksIn(markup(DayChart, { day, picked: 0, tongue: tongueOf(lang), onpick: () => undefined }));

const shareIn = (mark: Mark, name: string): number =>
  Number(/^([\d.]+)%$/.exec(mark.of[name] ?? '')?.[1] ?? NaN);

/** The blocks of each party's strip, in minutes after midnight. */
function blocksOf(marks: readonly Mark[], day: DayPlan) {
  const [first] = day.parties[0] ?? [];
  const [from, to] = [first?.from ?? 0, day.parties[0]?.at(-1)?.to ?? 0];
  const minute = (share: number) => from + (share / 100) * (to - from);
  const parties: { kind: string; station: string | null; from: number; to: number }[][] = [];
  for (const mark of marks) {
    if (mark.tag === 'button') parties.push([]);
    if (!(mark.of['class'] ?? '').startsWith('block')) continue;
    const start = minute(shareIn(mark, 'x'));
    const end = start + minute(shareIn(mark, 'width')) - from;
    parties.at(-1)?.push({ kind: mark.of['data-kind'] ?? '', station: mark.of['data-station'] ?? null, from: start, to: end }); // prettier-ignore
  }
  return parties;
}

describe.each([
  ['a usual class', {}],
  ['a large group in rain', { children: 48, adults: 9, leave: 14 * 60, rain: true }],
  ['nobody who eats', { lunch: null }],
] as [string, Partial<TripWish>][])('the chart of %s', (_, change) => {
  const day = dayOf(change);

  it('has a strip a party, with each slot from its minute to its minute', () => {
    const parties = blocksOf(chartOf(day), day);
    expect(parties).toHaveLength(day.parties.length);
    day.parties.forEach((slots, party) => {
      const blocks = parties[party] ?? [];
      expect(blocks.map(({ kind }) => kind)).toEqual(slots.map(({ kind }) => kind));
      expect(blocks.map(({ station }) => station)).toEqual(slots.map(({ station }) => station));
      slots.forEach((slot, index) => {
        expect(blocks[index]?.from).toBeCloseTo(slot.from, 1);
        expect(blocks[index]?.to).toBeCloseTo(slot.to, 1);
      });
    });
  });

  it('names every group with its children and adults, in the row of its party', () => {
    const text = markup(DayChart, { day, picked: 0, tongue: tongueOf('en'), onpick: () => undefined });
    const rows = text
      .split('<button')
      .slice(1)
      .map((row) => row.replace(/<[^>]*>/g, ' ').replace(/\s+/g, ' '));
    const told = rows.map((row) => [...row.matchAll(/Group (\d+): \d+ (\d+) children, (\d+) adults?/g)]);
    expect(told.flat().reduce((sum, [, , children]) => sum + Number(children), 0)).toBe(
      testWish(change).children,
    );
    told.forEach((groups, party) => {
      const planned = day.groups.filter((group) => group.party === party);
      expect(groups.map(([, ...numbers]) => numbers.map(Number))).toEqual(
        planned.map(({ id, children, adults }) => [id, children, adults]),
      );
    });
  });

  it('says in words what is longer than a walk: each station by its name and number', () => {
    const text = markup(DayChart, { day, picked: 0, tongue: tongueOf('en'), onpick: () => undefined });
    for (const [index, id] of day.stations.entries()) {
      const labels = [
        ...text.matchAll(new RegExp(`<b>${index + 1}</b>\\s*<span class="text">The ${id}</span>`, 'g')),
      ];
      expect(labels).toHaveLength(day.parties.length);
    }
  });

  it.each(['en', 'es'])('says the same as the table of each party, in %s', (lang) => {
    const tongue = tongueOf(lang);
    day.parties.forEach((slots, party) => {
      const marks = marksIn(markup(PartyDay, { day, party, tongue }));
      const times = marks
        .filter(({ tag, of }) => tag === 'th' && of['scope'] === 'row')
        .map(({ text }) => text);
      expect(times).toEqual(slots.map(({ from }) => shortClock(from)));
      const cells = marks.filter(({ tag }) => tag === 'td').map(({ text }) => text);
      const minutes = cells.filter((text) => text !== '').map(Number);
      expect(minutes).toEqual(slots.map(({ from, to }) => to - from));
      const whats = markup(PartyDay, { day, party, tongue });
      for (const slot of slots) expect(whats).toContain(`<span>${slotText(tongue, slot, day)}</span>`);
    });
  });

  it('shows on the way round where each group is at the first round', () => {
    const marks = marksIn(markup(FarmLoop, { day, farm: TEST_FARM, tongue: tongueOf('en') }));
    const now = withClass(marks, 'span', 'now').map(({ text }) => text);
    const ids = now.flatMap((text) => [...text.matchAll(/\d+/g)].map(Number));
    expect(now).toHaveLength(day.stations.length);
    expect(ids.toSorted((a, b) => a - b)).toEqual(day.groups.map(({ id }) => id));
  });
});

describe('the hours of a day as long as a school stays', () => {
  // On the narrowest phone, 360 px wide, the strip has 271 px, "1:00" takes 34 of them and "12:00" 44 (measured).
  const STRIP = 271;
  const widthOf = (text: string) => (text.length > 4 ? 44 : 34);

  it.each([150, 210, 230, 270, 300, 360, 420, 480])('of %i minutes have room on a phone', (minutes) => {
    const marks = chartOf(dayOf({ leave: 570 + minutes, lunch: null }));
    const shown = withClass(marks, 'span', 'whole').filter(({ of }) => !of['class']?.includes('tight'));
    expect(shown.length).toBeGreaterThan(1);
    const spans = shown.map((mark) => {
      const share = Number(/([\d.]+)%/.exec(mark.of['style'] ?? '')?.[1] ?? NaN);
      const width = widthOf(mark.text);
      const start = (share / 100) * STRIP - (mark.of['class']?.includes('last') ? width : 0);
      return { start, end: start + width };
    });
    spans.slice(1).forEach(({ start }, index) => expect(start).toBeGreaterThanOrEqual(spans[index]!.end));
  });
});

describe('groups that walk together', () => {
  it('share one strip, with a seam between each two', () => {
    const day = dayOf({ children: 48, adults: 9, leave: 14 * 60 });
    expect(day.groups.length).toBeGreaterThan(day.parties.length);
    const seams = withClass(chartOf(day), 'span', 'seam');
    expect(seams).toHaveLength(day.groups.length - day.parties.length);
  });
});
