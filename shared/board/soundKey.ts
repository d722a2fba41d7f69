// The name of a sentence's sound, worked out from the sentence itself: the same in the build and in the browser.

// Letters and digits that are not mistaken for one another in a file name; no vowels, so that no name is a word.
const SIGNS = '23456789bcdfghjkmnpqrstvwxyz';
const LENGTH = 8;

/** How many signs a key has. */
export const SOUND_KEY_LENGTH = LENGTH;

/**
 * A text as it is read: composed letters, single spaces, none at either end. What looks the same sounds the same.
 * @example readAs('  Four\n cups ') // 'Four cups'
 */
export function readAs(text: string): string {
  return text.normalize('NFC').replace(/\s+/gu, ' ').trim();
}

/**
 * The key of a text in a language: eight signs that name its sound file. It hangs on the words alone and not on the
 * voice that speaks them, so that a farm's own recording stays good when the voice changes or is missing. Of 1,500
 * texts, two fall on one key once in some 300,000 builds; the build looks for it.
 * @example soundKey('en', 'Four cups fill one jar.') // 'jtx3bbw5'
 */
export function soundKey(lang: string, text: string): string {
  // Two lanes of 32 bits, each multiplied on by every letter: the constants are odd, so that nothing is lost.
  let first = 0x9e3779b1;
  let second = 0x85ebca77;
  for (const sign of `${lang}\n${readAs(text)}`) {
    const code = sign.codePointAt(0) ?? 0;
    first = Math.imul(first ^ code, 0x01000193);
    second = Math.imul((second << 5) ^ (second >>> 27) ^ code, 0xc2b2ae3d);
  }
  // 52 bits of the two, which a number holds exactly.
  let rest = mixed(first ^ (second >>> 15)) * 0x100000 + (mixed(second ^ first) >>> 12);
  let key = '';
  for (let place = 0; place < LENGTH; place += 1) {
    key += SIGNS.charAt(rest % SIGNS.length);
    rest = Math.floor(rest / SIGNS.length);
  }
  return key;
}

/** Spreads every bit over all the others (xor, shift, multiply: the usual finish of a hash). */
function mixed(bits: number): number {
  let word = Math.imul(bits ^ (bits >>> 16), 0x7feb352d);
  word = Math.imul(word ^ (word >>> 15), 0x846ca68b);
  return (word ^ (word >>> 16)) >>> 0;
}

/** Ends of names of sound files that a browser may be able to play, with what it must know for that. */
export const SOUND_TYPES: Readonly<Record<string, string>> = Object.freeze({
  opus: 'audio/ogg; codecs=opus',
  ogg: 'audio/ogg; codecs=vorbis',
  mp3: 'audio/mpeg',
  m4a: 'audio/mp4',
  wav: 'audio/wav',
});

/**
 * The list of a language's sounds as the build writes it and the browser reads it: for each end of name the sounds
 * there are, one after another with spaces between. A farm's own recording has a stamp behind its key (`key-stamp`),
 * so that a new recording is a new file.
 */
export type SoundList = Readonly<Record<string, string>>;

/**
 * The sounds of a list by their key: the file's name in the language's folder.
 * @example soundFiles({ opus: 'jtx3bbw5', mp3: '2b3c4d5f-9k' }).get('2b3c4d5f') // '2b3c4d5f-9k.mp3'
 */
export function soundFiles(list: SoundList): Map<string, string> {
  const files = Object.entries(list).flatMap(([end, names]) =>
    names
      .split(' ')
      .filter((name) => name !== '')
      .map((name) => [name.slice(0, LENGTH), `${name}.${end}`] as const),
  );
  return new Map(files);
}
