// A small built board, a farm folder, and a voice that writes down what it is given, for tests of the sounds.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { soundFiles, soundKey, type SoundList } from '../../../shared/board/soundKey.ts';
import type { SoundWorld } from '../../../src/build/sound.ts';
import type { Speaker } from '../../../src/build/soundVoice.ts';
import { ownFolder, writeFiles } from './smallFarm.ts';

/** A page of this language with this body. */
export const page = (lang: string, body: string) =>
  `<!doctype html><html lang="${lang}"><body>${body}</body></html>`;
/** A board of two pages in English and one in Spanish. */
export const SITE = {
  'index.html': page('en', '<p data-read>Not of the board.</p>'),
  'barn/index.html': page('en', '<h1 data-read>What do you want to know?</h1><p data-read hidden>Later.</p>'),
  'barn/how-much/index.html': page(
    'en',
    '<h1 data-read>How much?</h1><p data-read>16 <svg><text>no</text></svg>cups</p>' +
      '<p data-read>It is <b data-for="younger">much</b><b data-for="older">plenty</b>.</p>' +
      '<script type="application/json" id="board-says">["Yes!","It takes  more."]</script>',
  ),
  'es/barn/index.html': page('es', '<h1 data-read>¿Qué quieres saber?</h1>'),
};

/** A site and a farm in a folder of their own, and a voice that writes down what it is given. */
export function soundWorld(files: Readonly<Record<string, string>> = SITE) {
  const root = ownFolder();
  writeFiles(join(root, 'dist'), files);
  const spoken: string[] = [];
  const speaker: Speaker = {
    packedBy: 'nothing',
    voiceOf: (lang) => ({
      manner: `test ${lang}`,
      end: 'opus',
      speak: async (text, file) => {
        spoken.push(text);
        await Promise.resolve();
        if (text.includes('unspeakable')) throw new Error('espeak-ng: ended with 1');
        writeFileSync(file, `${lang}: ${text}`);
      },
    }),
  };
  const given: SoundWorld = {
    dist: join(root, 'dist'),
    farm: join(root, 'farm'),
    cache: join(root, 'cache'),
    speaker,
    whySilent: 'there is none',
    now_ms: () => Date.now(),
  };
  return { root, given, spoken };
}

/** The sounds of a language by key. */
export const listOf = ({ dist }: SoundWorld, lang: string) =>
  soundFiles(JSON.parse(readFileSync(join(dist, `barn/sound/${lang}.json`), 'utf8')) as SoundList);
/** What is in the file that a text is heard from; null where it is silent. */
export const heard = (given: SoundWorld, lang: string, text: string) => {
  const file = listOf(given, lang).get(soundKey(lang, text));
  return file === undefined ? null : readFileSync(join(given.dist, 'barn/sound', lang, file), 'utf8');
};
