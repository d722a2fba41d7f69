// The name of a sentence's sound, and what of a page is read.
import fc from 'fast-check';
import { parseFragment } from 'parse5';
import { describe, expect, it } from 'vitest';
import { readText } from '../../../shared/board/readText.ts';
import {
  readAs,
  SOUND_KEY_LENGTH,
  SOUND_TYPES,
  soundFiles,
  soundKey,
} from '../../../shared/board/soundKey.ts';
import { PARSED } from '../../../src/build/soundTexts.ts';

describe('soundKey', () => {
  it('is eight signs that no one mistakes for one another, fit for every file system', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        expect(soundKey('en', text)).toMatch(/^[2-9bcdfghjkmnpqrstvwxyz]{8}$/);
        expect(soundKey('en', text)).toHaveLength(SOUND_KEY_LENGTH);
      }),
    );
  });

  // Files with these names may lie in farm folders: the key of a text must never change.
  it.each([
    ['en', 'Four cups fill one jar.', 'jtx3bbw5'],
    ['en', '', 'ddg8v632'],
    ['es', '¿Cuánta leche da una cabra?', '6cmwjmg2'],
  ])('of %s "%s" stays', (lang, text, key) => {
    expect(soundKey(lang, text)).toBe(key);
  });

  it('hangs on the language, on every letter and on their order', () => {
    const keys = [
      soundKey('en', 'No'),
      soundKey('es', 'No'),
      soundKey('en', 'no'),
      soundKey('en', 'No.'),
      soundKey('en', 'oN'),
      soundKey('en', 'Nó'),
    ];
    expect(new Set(keys).size).toBe(keys.length);
  });

  it('takes a text as it is seen: however its letters are composed and its lines broken', () => {
    expect(soundKey('es', ' ¿Cua\u0301nta\n   leche\u00a0da? ')).toBe(soundKey('es', '¿Cuánta leche da?'));
    expect(readAs('a\u202f b\t')).toBe('a b');
  });

  it('finds no two of 200,000 sentences under one key, though they differ in one number only', () => {
    // Birthday bound: n²/2 over 28⁸ keys gives 0.05 expected pairs.
    const keys = new Set(
      Array.from({ length: 200_000 }, (_, n) => soundKey('en', `The doe gave ${n} cups.`)),
    );
    expect(keys.size).toBe(200_000);
  });

  it('spreads its signs evenly', () => {
    const keys = Array.from({ length: 28_000 }, (_, n) => soundKey('es', `${n} tazas`));
    for (let place = 0; place < SOUND_KEY_LENGTH; place += 1) {
      const counts = new Map<string, number>();
      for (const key of keys) counts.set(key.charAt(place), (counts.get(key.charAt(place)) ?? 0) + 1);
      expect(counts.size).toBe(28);
      // 1,000 expected, standard deviation 31: five of them to either side.
      for (const count of counts.values()) expect(Math.abs(count - 1000)).toBeLessThan(160);
    }
  });
});

describe('soundFiles', () => {
  it('gives each key its file, a recording with its stamp', () => {
    const files = soundFiles({ opus: 'jtx3bbw5 2b3c4d5f', mp3: '9qv45bmz-1a2b3c', wav: '' });
    expect(Object.fromEntries(files)).toEqual({
      jtx3bbw5: 'jtx3bbw5.opus',
      '2b3c4d5f': '2b3c4d5f.opus',
      '9qv45bmz': '9qv45bmz-1a2b3c.mp3',
    });
  });

  it('knows a type for every end of a name', () => {
    for (const type of Object.values(SOUND_TYPES)) expect(type).toMatch(/^audio\//);
  });
});

describe('readText', () => {
  const read = (html: string, level: 'younger' | 'older' = 'younger') => {
    const [root] = parseFragment(html).childNodes;
    if (!root) throw new Error(html);
    return readText(root, level, PARSED);
  };

  it.each([
    ['<p>Four <b>cups</b>.</p>', 'Four cups.'],
    ['<p>16\n  <span>cups</span></p>', '16 cups'],
    ['<p><span class="big">65</span><span>jars</span></p>', '65 jars'],
    ['<p><span>65</span><!--[--><span>jars</span><!--]--></p>', '65 jars'],
    ['<dl><dt>fat</dt><dd>5 g</dd></dl>', 'fat 5 g'],
    ['<p>one<br>two</p>', 'one two'],
    ['<p>Tansy <svg><title>A doe</title><text>no</text></svg> gives</p>', 'Tansy gives'],
    ['<p>yes <i aria-hidden="true">no</i><i hidden>no</i><script>no</script></p>', 'yes'],
    ['<li>outer <span data-read>inner</span></li>', 'outer'],
    ['<p hidden>itself</p>', 'itself'],
    ['<p>goat&#39;s &amp; kid</p>', 'goat\'s & kid'],
  ])('%s is read as "%s"', (html, text) => {
    expect(read(html)).toBe(text);
  }); // prettier-ignore

  it('leaves out what is for the other level', () => {
    const html = '<p>all <b data-for="younger">few</b><b data-for="older">more</b></p>';
    expect([read(html), read(html, 'older')]).toEqual(['all few', 'all more']);
  });
});
