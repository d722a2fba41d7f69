// What the letters, the board and the emergency sheet say, only where it applies.
import { describe, expect, it } from 'vitest';
import { papersFor } from '../../../../shared/trip/papers/applies.ts';
import { chartOf } from '../../../../shared/trip/papers/chart.ts';
import { emergencySheet, THUNDER_WAIT_min } from '../../../../shared/trip/papers/emergency.ts';
import { hatchPath } from '../../../../shared/trip/papers/hatch.ts';
import { homePassages, HOME_QUESTIONS } from '../../../../shared/trip/papers/home.ts';
import { RUB_s, washTimes } from '../../../../shared/trip/papers/hygiene.ts';
import { cardsAPage, leaderCards } from '../../../../shared/trip/papers/leaderCards.ts';
import { inOtherWeather, rainPlan } from '../../../../shared/trip/papers/rainPlan.ts';
import { rainCalls } from '../../../../shared/trip/papers/rainCalls.ts';
import { sourcesOf } from '../../../../shared/trip/papers/sources.ts';
import { stationCautions } from '../../../../shared/trip/papers/stationCards.ts';
import { dayFacts, teacherPassages } from '../../../../shared/trip/papers/teacher.ts';
import { shortClock } from '../../../../shared/trip/papers/tell.ts';
import { NEEDS } from '../../../../shared/trip/types.ts';
import { NO_CONTACT } from '../../../../shared/trip/farmTrip.ts';
import { wordsOf } from '../../../../src/site/words.ts';
import { CONTACT, FAR_FARM, paperCase, tongueOf } from '../../../support/tripPaperCase.ts';

type Case = ReturnType<typeof paperCase>;
const INDOORS = ['goat-barn', 'hay-loft', 'barn-board', 'measuring-table'];
const CLEAN = ['measuring-table', 'practice-stand', 'kid-table', 'kitchen-window'];
const en = (trip: Case) => tongueOf('en', trip.farm);
const letter = (trip: Case): string => JSON.stringify(teacherPassages(trip, en(trip)));

describe('the letter to the teacher', () => {
  const SAYS = {
    'milk-allergy': 'Milk allergy:',
    asthma: 'Asthma, hay fever:',
    pregnant: 'Pregnancy:',
    immune: 'Weak defenses, a heart valve',
    medicine: 'Medicine: it travels',
    quiet: 'Quiet:',
    wheelchair: 'The wheelchair goes with group',
  } as const;

  it('tells the longest walk as the plan has it, past stations that are not visited', () => {
    for (const stations of [['goat-barn', 'measuring-table'], INDOORS, ['hay-loft']]) {
      const trip = paperCase({ stations, children: 12, adults: 3 }, {}, CONTACT, FAR_FARM);
      const slots = trip.day.parties
        .flat()
        .filter(({ kind, station }) => kind === 'walk' && station !== null);
      // Before the first station too; its head count is no walking. Nobody comes from the taps to this one.
      const longest =
        Math.max(...slots.map(({ from, to }) => to - from)) - FAR_FARM.rules['k-2'].headCount_min;
      expect(letter(trip)).toContain(
        `The longest walk takes ${Math.max(longest, FAR_FARM.gateWalk_min)} minutes`,
      );
    }
  });

  it.each(NEEDS)('speaks of %s only where the group has said so', (need) => {
    const stations = need === 'wheelchair' ? INDOORS : undefined;
    const wish = { needs: [need], ...(stations ? { stations } : {}) };
    expect(letter(paperCase(wish))).toContain(SAYS[need]);
    for (const other of NEEDS.filter((one) => one !== need))
      expect(letter(paperCase(wish))).not.toContain(SAYS[other]);
    expect(letter(paperCase({}))).not.toContain(SAYS[need]);
  });

  it('names what it says of births by where that comes from', () => {
    expect(sourcesOf('teacher', paperCase({}))).not.toContain('q-fever');
    for (const need of ['pregnant', 'immune'] as const)
      expect(sourcesOf('teacher', paperCase({ needs: [need] }))).toContain('q-fever');
    const near = paperCase({ stations: INDOORS }, { kiddingNear: true });
    expect([...sourcesOf('teacher', near), ...sourcesOf('stations', near)].filter((one) => one === 'q-fever')).toHaveLength(2); // prettier-ignore
    expect(sourcesOf('stations', paperCase({ stations: CLEAN }, { kiddingNear: true }))).toEqual([]);
  });

  it('tells groups and adults as many as they are, one child too', () => {
    const groups = (lang: 'en' | 'es', children: number, adults: number) => {
      const trip = paperCase({ children, adults, lunch: null });
      return dayFacts(trip, tongueOf(lang, trip.farm)).find(({ id }) => id === 'groups')?.value;
    };
    expect(groups('en', 1, 2)).toBe('1 group of 1 child. 2 adults lead. None is kept free.');
    expect(groups('es', 1, 2)).toBe('1 grupo de 1 estudiante. Guían 2 adultos. Nadie queda libre.');
    expect(groups('en', 16, 3)).toMatch(/^3 groups of 5 or 6 children\. 3 adults lead\./);
    expect(groups('es', 16, 3)).toMatch(/^3 grupos de 5 a 6 estudiantes\. Guían 3 adultos\./);
  });

  it('names no source that nothing on a paper rests on, and the rule of thunder where it is told', () => {
    expect(sourcesOf('emergency', paperCase({}))).not.toContain('practice');
    const roofed = paperCase({ stations: INDOORS });
    expect(letter(roofed)).toContain(`${THUNDER_WAIT_min} minutes after the last one`);
    expect(sourcesOf('teacher', roofed)).toEqual(expect.arrayContaining(['thunder', 'practice']));
  });

  it('has an auto-injector travel with the group of a child with an allergy, as an inhaler does', () => {
    for (const need of ['milk-allergy', 'asthma', 'medicine'] as const) {
      const trip = paperCase({ needs: [need] });
      expect(letter(trip)).toContain('auto-injectors and medicine, in the bag of the adult');
      for (const card of leaderCards(trip)) expect(card.watch).toContain('medicine');
    }
    expect(letter(paperCase({ needs: ['quiet'] }))).not.toContain('auto-injectors');
  });

  it('tells a kindergarten of its greater risk, and nobody else', () => {
    expect(letter(paperCase({ grade: 0 }))).toContain('Children under 5 fall ill');
    expect(letter(paperCase({ grade: 1 }))).not.toContain('Children under 5 fall ill');
  });

  it('says what is seen instead in the off-season, and why', () => {
    const trip = paperCase(
      { stations: ['milking-stand', ...INDOORS.slice(0, 3)] },
      { milkings: [], noMilking: 'dry', doesDue: 0 },
    );
    const instead = teacherPassages(trip, en(trip)).find(({ id }) => id === 'instead');
    expect(instead?.text[0]).toContain('The does are dry');
    expect(instead?.points).toEqual(['<practice-stand>: does practice-stand']);
    expect(letter(paperCase({}))).not.toContain('instead of milking');
  });

  it('says that all stations are roofed instead of a rain plan', () => {
    const trip = paperCase({ stations: INDOORS });
    expect(papersFor(trip)).not.toContain('rain');
    expect(letter(trip)).toContain('All your stations have a roof');
    expect(letter(trip)).not.toContain('rain plan');
    expect(letter(paperCase({}))).toContain('rain plan in this pack');
  });

  it('has no rule of animals where none are met', () => {
    const trip = paperCase({ stations: CLEAN, lunch: null });
    expect(letter(trip)).not.toMatch(/No food, drink or gum where animals are|Service animals/);
    expect(letter(trip)).toContain('Nobody drinks raw milk');
  });
});

describe('the letter home', () => {
  it.each(['en', 'es'])('is the same for every family, whatever the class has said, in %s', (lang) => {
    const home = (trip: Case): unknown => homePassages(trip, wordsOf(lang));
    expect(home(paperCase({ needs: NEEDS.filter((one) => one !== 'wheelchair') }))).toEqual(
      home(paperCase({})),
    );
  });

  it('always asks about allergies, inhalers and photos, and asks for no name', () => {
    expect(HOME_QUESTIONS).toEqual(expect.arrayContaining(['allergy', 'inhaler', 'photo']));
    const text = JSON.stringify(homePassages(paperCase({}), wordsOf('en')));
    expect(text).toMatch(/Tell the teacher of any allergy.*inhaler.*travels with your child’s own group/);
    expect(text).toMatch(/pregnant.*weak defenses/);
    expect(text).toContain('Nobody drinks raw milk.');
    expect(text).toContain('Closed shoes');
  });

  it('asks for no lunch where nobody eats', () => {
    const without = paperCase({ lunch: null });
    expect(JSON.stringify(homePassages(without, wordsOf('en')))).not.toMatch(/A lunch that/);
    expect(JSON.stringify(homePassages(paperCase({}), wordsOf('en')))).toMatch(/A lunch that/);
  });
});

describe('times', () => {
  // Common practice, no source: a look at the forecast 18 and 2 hours before.
  it('are reckoned back over midnight and over the end of a month', () => {
    expect(rainCalls({ date: '2026-06-01', arrive: 570 })).toEqual([
      { date: '2026-05-31', at: 930 },
      { date: '2026-06-01', at: 450 },
    ]);
    expect(rainCalls({ date: '2026-03-02', arrive: 90 })).toEqual([
      { date: '2026-03-01', at: 450 },
      { date: '2026-03-01', at: 1410 },
    ]);
  });

  it('are short on cards', () => {
    expect([0, 59, 570, 720, 785, 1439].map(shortClock)).toEqual(['12:00', '12:59', '9:30', '12:00', '1:05', '11:59']); // prettier-ignore
  });

  it('of scrubbing and of thunder are as published', () => {
    // CDC, About Handwashing: at least 20 seconds. US National Weather Service: 30 minutes after the last thunder.
    expect([RUB_s, THUNDER_WAIT_min]).toEqual([20, 30]);
  });
});

describe('cards', () => {
  it('name no need that would tell of a person, but what a leader does', () => {
    const watch = leaderCards(paperCase({ needs: ['pregnant', 'immune', 'milk-allergy', 'asthma'] }))[0]
      ?.watch;
    expect(watch).toEqual(['stay', 'count', 'wash', 'no-food', 'medicine', 'share']);
    expect(leaderCards(paperCase({}))[0]?.watch).toEqual(['stay', 'count', 'wash', 'no-food']);
  });

  it('tell the leader of the wheelchair alone', () => {
    const cards = leaderCards(paperCase({ needs: ['wheelchair'], stations: INDOORS }));
    expect(cards.filter(({ watch }) => watch.includes('wheelchair'))).toHaveLength(1);
    expect(cards.find(({ watch }) => watch.includes('wheelchair'))?.group.wheelchair).toBe(true);
  });

  it('tell the station that takes another one’s place in rain', () => {
    const told = leaderCards(paperCase({})).map(({ lines }) => lines.filter(({ inRain }) => inRain !== null));
    for (const lines of told)
      expect(lines.map(({ slot, inRain }) => [slot.station, inRain])).toEqual([['pasture-rail', 'hay-loft']]);
  });

  it('say that they are for a dry day where rain moves the times', () => {
    const far = paperCase({}, {}, CONTACT, FAR_FARM);
    expect(rainPlan(far).sameTimes).toBe(false);
    for (const { lines, otherTimes } of leaderCards(far)) {
      expect(otherTimes).toBe(true);
      expect(lines.every(({ inRain }) => inRain === null)).toBe(true);
    }
    const wet = inOtherWeather(far);
    if (!wet) throw new Error('There is no such day.');
    expect(leaderCards(wet).every(({ otherTimes }) => !otherTimes)).toBe(true);
    expect(inOtherWeather(wet)).toEqual(far);
  });

  it('are larger where there is more on them', () => {
    const [card] = leaderCards(paperCase({}));
    if (!card) throw new Error('There is no card.');
    const long = { ...card, lines: [...card.lines, ...card.lines] };
    const longer = { ...card, lines: [...long.lines, ...card.lines] };
    expect(cardsAPage([{ ...card, lines: card.lines.slice(0, 8) }])).toBe(4);
    expect([cardsAPage([card]), cardsAPage([long]), cardsAPage([card, longer])]).toEqual([2, 1, 1]);
  });

  it('of stations warn of births only where kids are near, and of touch only where animals are touched', () => {
    const near = paperCase({}, { kiddingNear: true });
    const of = (trip: Case, id: string) =>
      trip.farm.stations.filter((one) => one.id === id).flatMap((one) => stationCautions(trip, one));
    expect(of(near, 'goat-barn')).toEqual(['touch', 'sores', 'kidding', 'wash']);
    expect(of(paperCase({}), 'goat-barn')).toEqual(['touch', 'sores', 'wash']);
    expect(of(near, 'kitchen-window')).toEqual([]);
    expect(of(near, 'milking-stand')).toContain('raw');
  });
});

describe('the board and the emergency sheet', () => {
  it('say only the times at which the visit washes', () => {
    expect(washTimes(paperCase({}))).toEqual([
      'after-animals',
      'before-food',
      'after-toilet',
      'before-leaving',
    ]);
    expect(washTimes(paperCase({ stations: CLEAN, lunch: null }))).toEqual(['after-toilet']);
  });

  it('leave a line where the farm has not said', () => {
    const values = (trip: Case) => emergencySheet(trip).calls.map(({ value }) => value);
    expect(values(paperCase({}, {}, NO_CONTACT)).every((value) => value === '')).toBe(true);
    expect(values(paperCase({}))).toContain('608-555-0112');
  });

  it('speak of a medicine only where one may travel along, and of animals where there are some', () => {
    expect(emergencySheet(paperCase({})).points).toEqual(expect.arrayContaining(['bus', 'load']));
    const { points } = emergencySheet(paperCase({ buses: 0 }));
    expect([points[0], points.at(-1)]).toEqual(['gate', 'leave']);
    expect(emergencySheet(paperCase({})).steps).not.toContain('allergy');
    expect(emergencySheet(paperCase({ needs: ['milk-allergy'] })).steps).toContain('allergy');
    expect(emergencySheet(paperCase({ stations: CLEAN })).steps).not.toContain('animal');
  });
});

describe('the chart', () => {
  it('has each party from end to end without a gap', () => {
    const chart = chartOf(paperCase({}).day);
    for (const { blocks } of chart.rows)
      blocks.forEach(({ x, width }, index) => {
        expect(x + width).toBeCloseTo(blocks[index + 1]?.x ?? chart.width - 4, 6);
      });
  });

  it.each(['walk', 'welcome', 'toilets', 'wash', 'lunch'] as const)('keeps the hatch of %s inside its block', (kind) => {
    const path = hatchPath(kind, { x: 10, y: 20, width: 7.3, height: 6 });
    const spots = [...path.matchAll(/[ML]([\d.]+) ([\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)]);
    expect(spots.length).toBeGreaterThan(2);
    for (const [x = 0, y = 0] of spots) {
      expect(x).toBeGreaterThanOrEqual(10);
      expect(x).toBeLessThanOrEqual(17.3);
      expect(y).toBeGreaterThanOrEqual(20);
      expect(y).toBeLessThanOrEqual(26);
    }
  });
}); // prettier-ignore
