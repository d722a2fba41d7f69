// How large a station's card is printed: smaller the fuller it is, and every text of Pailside within what was measured to fit.
import { describe, expect, it } from 'vitest';
import { BANDS } from '../../../../shared/quantity/grade.ts';
import { cardFill, cardSize, type CardSize } from '../../../../shared/trip/papers/cardSize.ts';
import { stationCautions } from '../../../../shared/trip/papers/stationCards.ts';
import { USUAL_STATIONS } from '../../../../shared/trip/usualRules.ts';
import { readStationFiles } from '../../../../src/content/stationFile.ts';
import { wordsOf } from '../../../../src/site/words.ts';
import { say } from '../../../../shared/words/words.ts';
import { paperCase } from '../../../support/tripPaperCase.ts';

const SIZES: readonly CardSize[] = ['large', 'middle', 'plain', 'small'];
// Cards of this fill, in the smallest size, were measured to end on their page of letter paper.
const FULLEST = 900;

describe('cardSize', () => {
  it('never grows as a card fills', () => {
    let last = 0;
    for (let letters = 0; letters < 1200; letters += 20) {
      const at = SIZES.indexOf(cardSize(['x'.repeat(letters)], ['y'.repeat(300)], 1));
      expect(at).toBeGreaterThanOrEqual(last);
      last = at;
    }
    expect(last).toBe(SIZES.length - 1);
  });

  it('has room for every station of ours in both languages, also near a birth and with its notes', () => {
    const { stations } = readStationFiles('content/stations', ['en', 'es']);
    const near = paperCase({}, { kiddingNear: true });
    for (const lang of ['en', 'es'])
      for (const text of stations[lang] ?? []) {
        const station = USUAL_STATIONS.find(({ id }) => id === text.id);
        if (!station) throw new Error(`no station ${text.id}`);
        const notes = Number(!station.roofed) + Number(USUAL_STATIONS.some(({ standIn }) => standIn === station.id));
        // Near a birth the kids' own pen has no card.
        const cautions = stationCautions(station.kidding ? paperCase({}) : near, station).map((name) => say(wordsOf(lang), `trip-papers.station.${name}`));
        for (const band of BANDS) {
          const said = [...text.say[band], ...text.ask[band].flatMap(({ ask, answer }) => [ask, answer])];
          expect(cardFill(said, [...text.care, ...cautions], notes), `${lang} ${text.id} ${band}`).toBeLessThan(FULLEST);
        }
      }
  });
}); // prettier-ignore
