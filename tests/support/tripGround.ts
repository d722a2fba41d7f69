// A ground to plan trips on without a site: the usual farm, no doe, two sheets for a visit, invented names.
import { zoneText } from '../../src/farm/zoneText.ts';
import type { TripGround } from '../../src/print/tripGround.ts';
import { wordsOf } from '../../src/site/words.ts';
import { dayNumber } from '../../shared/calendar/day.ts';
import { NO_CONTACT } from '../../shared/trip/farmTrip.ts';
import { USUAL_FARM } from '../../shared/trip/usualRules.ts';
import { usualWish } from '../../shared/trip/usualWish.ts';

/** Day number of the ground: 20 May 2026. */
export const GROUND_DAY = dayNumber('2026-05-20') ?? 0;

/** The ground itself, in English and Spanish. */
export const GROUND: TripGround = {
  farmName: 'Finca Ñandú',
  farm: USUAL_FARM,
  season: {
    asOf: GROUND_DAY,
    milkings: { am: { from: 540, to: 700 }, pm: { from: 1050, to: 1100 } },
    does: [],
    milk: [],
    unit: 'cup',
    jar_mL: 1892.7,
  },
  usual: usualWish(GROUND_DAY),
  contact: NO_CONTACT,
  shelf: {
    langs: ['en', 'es'],
    word: '2026-05-14',
    paper: 'letter',
    sheets: [
      { name: 'eyes-and-ears', band: 'k-2', when: 'at', minutes: 15, langs: ['en', 'es'] },
      { name: 'one-mark-for-each', band: 'k-2', when: 'at', minutes: 15, langs: ['en'] },
      { name: 'do-you-remember', band: 'k-2', when: 'after', minutes: 15, langs: ['en', 'es'] },
    ],
  },
  zone: {
    name: 'America/Chicago',
    text: zoneText('America/Chicago', 2025, 2029),
    firstYear: 2025,
    lastYear: 2029,
  },
  tongues: (['en', 'es'] as const).map((lang) => ({ lang, name: lang, words: wordsOf(lang), stations: [] })),
};
