// A farm's own recordings: which text each one takes over, and what is told of those that fit none.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { soundKey } from '../../../shared/board/soundKey.ts';
import { makeSounds } from '../../../src/build/sound.ts';
import { writeFiles } from './smallFarm.ts';
import { heard, listOf, page, SITE, soundWorld } from './soundWorld.ts';

describe("a farm's own recordings", () => {
  const KEY = soundKey('en', 'How much?');

  it('take the place of the voice, and a new one is a new file', async () => {
    const { given, spoken } = soundWorld();
    writeFiles(given.farm, { [`recordings/en/odile reads.${KEY}.MP3`]: 'her voice' });
    const { said, notes } = await makeSounds(given);
    expect(heard(given, 'en', 'How much?')).toBe('her voice');
    expect(spoken).not.toContain('How much?');
    expect(said[0]).toContain('1 of them recorded by the farm');
    expect(notes).toEqual([]);
    const before = listOf(given, 'en').get(KEY);
    writeFiles(given.farm, { [`recordings/en/odile reads.${KEY}.MP3`]: 'her voice again' });
    await makeSounds(given);
    expect(listOf(given, 'en').get(KEY)).not.toBe(before);
    expect(heard(given, 'en', 'How much?')).toBe('her voice again');
  });

  it('are heard where there is no other voice', async () => {
    const { given } = soundWorld();
    writeFiles(given.farm, { [`recordings/en/${KEY}.opus`]: 'her voice' });
    const { said } = await makeSounds({ ...given, speaker: null });
    expect(heard(given, 'en', 'How much?')).toBe('her voice');
    expect(said).toEqual(['the board has 1 recording of the farm and no other voice: there is none.']);
  });

  it('are told by name when their text has changed, with the text that it was and the nearest one now', async () => {
    const { given } = soundWorld();
    await makeSounds(given);
    writeFiles(given.farm, { [`recordings/en/a.${soundKey('en', 'It takes more.')}.mp3`]: 'her voice' });
    writeFiles(given.dist, {
      'barn/how-much/index.html': page('en', '<p data-read>It takes two more.</p><p data-read>How much?</p>'),
    });
    const { notes } = await makeSounds(given);
    expect(notes).toEqual([
      `recordings/en/a.${soundKey('en', 'It takes more.')}.mp3 is out of date: the board has no such text any more ("It takes more."). Nearest to it is now "It takes two more." (key ${soundKey('en', 'It takes two more.')}).`,
    ]);
  });

  it('are told by what stands in their name where their text was never seen', async () => {
    const { given } = soundWorld();
    writeFiles(given.farm, { 'recordings/en/what-do-you-want.22222222.wav': 'x' });
    const { notes } = await makeSounds(given);
    expect(notes[0]).toContain('Nearest to it is now "What do you want to know?"');
  });

  it('are told when they can be no recording, when there are two, and when they lie in no language', async () => {
    const { given } = soundWorld();
    writeFiles(given.farm, {
      'recordings/en/how much.mp3': 'x',
      [`recordings/en/a.${KEY}.flac`]: 'x',
      [`recordings/en/b.${KEY}.mp3`]: 'first',
      [`recordings/en/c.${KEY}.wav`]: 'second',
      'recordings/stray.mp3': 'x',
      'recordings/README.txt': 'x',
      'recordings/en/.DS_Store': 'x',
    });
    const { notes } = await makeSounds(given);
    expect(notes.map((note) => note.slice(0, 60))).toEqual([
      expect.stringContaining(`recordings/en/a.${KEY}.flac: its name should`),
      `recordings/en/c.${KEY}.wav is a second recording of one text`.slice(0, 60),
      expect.stringContaining('recordings/en/how much.mp3: its name should end in the'),
      expect.stringContaining('recordings/stray.mp3 is in no folder of a language'),
    ]);
    expect(heard(given, 'en', 'How much?')).toBe('first');
  });

  it('can be a way to say a name', async () => {
    const { given, spoken } = soundWorld({
      'es/barn/index.html': page('es', '<p data-read>Wren da leche.</p><p data-read>Miss Mo da leche.</p>'),
    });
    writeFiles(given.farm, { 'recordings/es/say-as.txt': 'Wren = Ren\nMiss Mo=Mis Mou\n\nnot a line\n' });
    await makeSounds(given);
    expect(spoken.toSorted()).toEqual(['Mis Mou da leche.', 'Ren da leche.']);
    expect(heard(given, 'es', 'Wren da leche.')).toBe('es: Ren da leche.');
  });

  it('are listed with their keys on the page for the coordinator, what stays apart from what changes', async () => {
    const table = (which: string) => `<table><tbody data-texts="${which}" data-names="Tansy|Wren|Miss Mo" data-own="recorded"></tbody></table>`; // prettier-ignore
    const { given } = soundWorld({
      ...SITE,
      'barn/who/index.html': page('en', '<p data-read>It is Tansy &amp; her kid.</p><p data-read>It is Miss Mo.</p>'),
      'recordings/index.html': page('en', table('stay') + table('change')),
    });
    writeFiles(given.farm, { [`recordings/en/${KEY}.opus`]: 'her voice' });
    await makeSounds(given);
    const html = readFileSync(join(given.dist, 'recordings/index.html'), 'utf8');
    const [stay = '', change = ''] = html.split('data-texts="change"');
    expect(stay).toContain(`<tr><td>How much?</td><td><code>${KEY}</code></td><td>How much?</td><td>recorded</td></tr>`);
    expect(change.match(/<tr>/g)).toHaveLength(3);
    expect(change).toContain('<td>It is Miss Mo.</td>');
    expect(change).toContain('<td>It is Tansy &amp; her kid.</td>');
    expect(change).toContain('<td>16 cups</td>');
    expect(stay).not.toContain('¿');
  }); // prettier-ignore
});
