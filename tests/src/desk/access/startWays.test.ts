// What `npm start` takes and what it says: the words to a person at the terminal, never to a file.
import { describe, expect, it } from 'vitest';
import { hereAlone } from '../../../../src/desk/access/access.ts';
import { waysIn } from '../../../../src/desk/access/tellWays.ts';
import { startOptions } from '../../../../src/desk/startOptions.ts';
import { deskOnLan } from './onLan.ts';

const URL_HERE = 'http://localhost:4173/visit/';
const addresses = [
  { address: '192.168.1.5', network: 'wlan0' },
  { address: '10.0.0.2', network: 'eth0' },
];

describe('startOptions', () => {
  it('opens the desk to this machine alone where nothing is said', () => {
    expect(startOptions([])).toEqual({ serve: true, lan: false, newWords: false });
    expect(startOptions(['--lan', '--new-words'])).toEqual({ serve: true, lan: true, newWords: true });
    expect(startOptions(['--no-serve'])).toEqual({ serve: false, lan: false, newWords: false });
  });

  it.each([['--wan'], ['lan'], ['--new-words'], ['--lan=yes']])(
    'says what there is instead of %s',
    (word) => {
      expect(() => startOptions([word])).toThrow(/npm start -- --lan --new-words/);
    },
  );
});

describe('waysIn', () => {
  it('shows addresses, words and code at a terminal', () => {
    const { access, words } = deskOnLan();
    const text = waysIn(access, { url: URL_HERE, isTerminal: true, addresses }).join('\n');
    expect(text).toContain('http://192.168.1.5:4173/visit/book/   (wlan0)');
    expect(text).toContain('http://10.0.0.2:4173/visit/book/   (eth0)');
    expect(text).toContain(words.join(' '));
    expect(text).toContain('█');
  });

  it('says where to see them where a file or a log reads along', () => {
    const { access, words } = deskOnLan();
    for (const there of [addresses, []]) {
      const text = waysIn(access, { url: URL_HERE, isTerminal: false, addresses: there }).join('\n');
      for (const word of words) expect(text).not.toMatch(new RegExp(`\\b${word}\\b`));
      expect(text).toContain('http://localhost:4173/visit/desk/');
    }
  });

  it('says nothing of a desk for this machine alone', () => {
    expect(waysIn(hereAlone(), { url: URL_HERE, isTerminal: true, addresses })).toEqual([]);
  });
});
