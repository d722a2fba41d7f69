// The sounds of the board, with a stand-in for the voice: what is made, kept, replaced, and told.
import { existsSync, readdirSync, readFileSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { soundFiles, soundKey, type SoundList } from '../../../shared/board/soundKey.ts';
import { build } from '../../../src/build/build.ts';
import { makeSounds, type SoundWorld } from '../../../src/build/sound.ts';
import { readPage, soundTexts } from '../../../src/build/soundTexts.ts';
import { findSpeaker, hasVoice, type Speaker } from '../../../src/build/soundVoice.ts';
import { ownFolder, smallWorld, writeFiles } from './smallFarm.ts';

const page = (lang: string, body: string) =>
  `<!doctype html><html lang="${lang}"><body>${body}</body></html>`;
const SITE = {
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
function world(files: Readonly<Record<string, string>> = SITE) {
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

const listOf = ({ dist }: SoundWorld, lang: string) =>
  soundFiles(JSON.parse(readFileSync(join(dist, `barn/sound/${lang}.json`), 'utf8')) as SoundList);
const heard = (given: SoundWorld, lang: string, text: string) => {
  const file = listOf(given, lang).get(soundKey(lang, text));
  return file === undefined ? null : readFileSync(join(given.dist, 'barn/sound', lang, file), 'utf8');
};

describe('the texts of a page', () => {
  it('are what is marked, at either level, hidden or not, and what it may say after a tap', () => {
    expect(readPage(SITE['barn/how-much/index.html'])).toEqual({
      lang: 'en',
      title: 'How much?',
      texts: new Set(['How much?', '16 cups', 'It is much.', 'It is plenty.', 'Yes!', 'It takes more.']),
    });
  });

  it('come from the board alone, each once, with the page that has it first', () => {
    const { given } = world({ ...SITE, 'barn/what/index.html': page('en', '<p data-read>Yes!</p>') });
    const { texts, clashes } = soundTexts(given.dist);
    expect(clashes).toEqual([]);
    expect(texts.map(({ lang, text }) => `${lang} ${text}`).sort()).toHaveLength(9);
    expect(texts.find(({ text }) => text === 'Yes!')).toMatchObject({ path: 'barn/how-much/', pages: 2 });
  });

  // Found by trying a million texts: these two have one key.
  it('are both left out where two have one key, since a page would play one for the other', () => {
    const pair = ['Tap pail 64450.', 'Tap pail 1116862.'];
    expect(new Set(pair.map((text) => soundKey('en', text))).size).toBe(1);
    const body = [...pair, 'Good.'].map((text) => `<p data-read>${text}</p>`).join('');
    const { given } = world({ 'barn/index.html': page('en', body), 'barn/a/index.html': page('en', body) });
    const { texts, clashes } = soundTexts(given.dist);
    expect(texts.map(({ text }) => text)).toEqual(['Good.']);
    expect(clashes.toSorted()).toEqual(pair.toSorted());
  });
});

describe('the sounds', () => {
  it('are made for every text, under the key of the text, in a list for each language', async () => {
    const { given } = world();
    const { said, notes } = await makeSounds(given);
    expect(listOf(given, 'en').size).toBe(8);
    expect(heard(given, 'en', 'Later.')).toBe('en: Later.');
    expect(heard(given, 'en', 'It takes more.')).toBe('en: It takes more.');
    expect(heard(given, 'es', '¿Qué quieres saber?')).toBe('es: ¿Qué quieres saber?');
    expect(heard(given, 'en', 'Not of the board.')).toBeNull();
    expect(said[0]).toMatch(/^9 texts of the board can be heard; 9 spoken anew; 1 MB/);
    expect(notes).toEqual([]);
  });

  it('are kept, so that only a new text is spoken', async () => {
    const { given, spoken } = world();
    await makeSounds(given);
    spoken.length = 0;
    writeFiles(given.dist, { 'es/barn/index.html': page('es', '<h1 data-read>¿Qué más?</h1>') });
    const { said } = await makeSounds(given);
    expect(spoken).toEqual(['¿Qué más?']);
    expect(said[0]).toContain('1 spoken anew');
    expect([...listOf(given, 'es').keys()]).toEqual([soundKey('es', '¿Qué más?')]);
    expect(readdirSync(join(given.dist, 'barn/sound/es'))).toHaveLength(1);
  });

  it('go from the cache when no build has used them for a quarter of a year', async () => {
    const { given } = world();
    await makeSounds(given);
    const files = readdirSync(given.cache).filter((name) => name.endsWith('.opus'));
    const long = (Date.now() - 100 * 24 * 3600 * 1000) / 1000;
    for (const name of files) utimesSync(join(given.cache, name), long, long);
    writeFiles(given.dist, { 'es/barn/index.html': page('es', '<h1 data-read>¿Qué más?</h1>') });
    await makeSounds(given);
    const left = readdirSync(given.cache).filter((name) => name.endsWith('.opus'));
    // The Spanish heading that is gone, and nothing that is in use.
    expect(left).toHaveLength(files.length);
    expect(left.filter((name) => !files.includes(name))).toHaveLength(1);
  });

  it('do without a text that could not be spoken, and tell which and why', async () => {
    const { given } = world({ 'barn/index.html': page('en', '<p data-read>Good.</p><p data-read>unspeakable</p>') });
    const { notes } = await makeSounds(given);
    expect(heard(given, 'en', 'Good.')).toBe('en: Good.');
    expect(heard(given, 'en', 'unspeakable')).toBeNull();
    expect(notes).toEqual(['"unspeakable" could not be spoken and stays silent: espeak-ng: ended with 1']);
    expect(readdirSync(given.cache).filter((name) => /\.\d+$/.test(name))).toEqual([]);
  }); // prettier-ignore

  it('are there for two texts that are said alike and are spoken at the same moment', async () => {
    const { given } = world({
      'barn/index.html': page('en', '<p data-read>1/2 cup</p><p data-read>½ cup</p>'),
    });
    const slow = (lang: string, text: string) => ({
      manner: lang,
      end: 'opus',
      speak: async (_: string, file: string) => {
        writeFileSync(file, text);
        await new Promise((done) => setTimeout(done, 20));
      },
    });
    const { notes } = await makeSounds({ ...given, speaker: { packedBy: 'nothing', voiceOf: (lang) => slow(lang, 'half a cup') } }); // prettier-ignore
    expect(notes).toEqual([]);
    expect(heard(given, 'en', '1/2 cup')).toBe('half a cup');
    expect(heard(given, 'en', '½ cup')).toBe('half a cup');
  });

  it('are none where there is no voice, said in one line; the lists are there and empty', async () => {
    const { given } = world();
    const { said } = await makeSounds({ ...given, speaker: null });
    expect(said).toEqual(['the board stays silent and shows no Listen button: there is none.']);
    expect(listOf(given, 'en').size + listOf(given, 'es').size).toBe(0);
  });

  it('tell of a language that has no voice', async () => {
    const { given } = world();
    const english: Speaker = { packedBy: 'nothing', voiceOf: (lang) => (lang === 'en' ? given.speaker?.voiceOf(lang) ?? null : null) }; // prettier-ignore
    const { said } = await makeSounds({ ...given, speaker: english });
    expect(said.at(-1)).toBe('espeak-ng has no voice for the language "es".');
    expect(listOf(given, 'es').size).toBe(0);
  });

  it('tell of their size where nothing packs them', async () => {
    const { given } = world();
    const { said } = await makeSounds({ ...given, speaker: { ...given.speaker, packedBy: null } as Speaker });
    expect(said.at(-1)).toContain('nothing here to pack the sounds with');
  });
});

describe("a farm's own recordings", () => {
  const KEY = soundKey('en', 'How much?');

  it('take the place of the voice, and a new one is a new file', async () => {
    const { given, spoken } = world();
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
    const { given } = world();
    writeFiles(given.farm, { [`recordings/en/${KEY}.opus`]: 'her voice' });
    const { said } = await makeSounds({ ...given, speaker: null });
    expect(heard(given, 'en', 'How much?')).toBe('her voice');
    expect(said).toEqual(['the board has 1 recording of the farm and no other voice: there is none.']);
  });

  it('are told by name when their text has changed, with the text that it was and the nearest one now', async () => {
    const { given } = world();
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
    const { given } = world();
    writeFiles(given.farm, { 'recordings/en/what-do-you-want.22222222.wav': 'x' });
    const { notes } = await makeSounds(given);
    expect(notes[0]).toContain('Nearest to it is now "What do you want to know?"');
  });

  it('are told when they can be no recording, when there are two, and when they lie in no language', async () => {
    const { given } = world();
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
    const { given, spoken } = world({ 'es/barn/index.html': page('es', '<p data-read>Wren da leche.</p>') });
    writeFiles(given.farm, { 'recordings/es/say-as.txt': 'Wren = Ren\n\nnot a line\n' });
    await makeSounds(given);
    expect(spoken).toEqual(['Ren da leche.']);
    expect(heard(given, 'es', 'Wren da leche.')).toBe('es: Ren da leche.');
  });

  it('are listed with their keys on the page for the coordinator, what stays apart from what changes', async () => {
    const table = (which: string) => `<table><tbody data-texts="${which}" data-names="Tansy|Wren" data-own="recorded"></tbody></table>`; // prettier-ignore
    const { given } = world({
      ...SITE,
      'barn/who/index.html': page('en', '<p data-read>It is Tansy &amp; her kid.</p>'),
      'recordings/index.html': page('en', table('stay') + table('change')),
    });
    writeFiles(given.farm, { [`recordings/en/${KEY}.opus`]: 'her voice' });
    await makeSounds(given);
    const html = readFileSync(join(given.dist, 'recordings/index.html'), 'utf8');
    const [stay = '', change = ''] = html.split('data-texts="change"');
    expect(stay).toContain(`<tr><td>How much?</td><td><code>${KEY}</code></td><td>How much?</td><td>recorded</td></tr>`);
    expect(change.match(/<tr>/g)).toHaveLength(2);
    expect(change).toContain('<td>It is Tansy &amp; her kid.</td>');
    expect(change).toContain('<td>16 cups</td>');
    expect(stay).not.toContain('¿');
  }); // prettier-ignore
});

describe('a build', () => {
  it('takes a farm folder with recordings in it, and builds again when one is added', async () => {
    const { world: small, heard: told } = smallWorld(ownFolder());
    expect(await build(small, { unlessFresh: true })).toMatchObject({ ok: true, fresh: false });
    writeFiles(small.places.farm, { 'recordings/en/welcome.jtx3bbw5.mp3': 'her voice' });
    expect(await build(small, { unlessFresh: true })).toMatchObject({ ok: true, fresh: false });
    expect(await build(small, { unlessFresh: true })).toMatchObject({ ok: true, fresh: true });
    expect(told.complaints).toEqual([]);
  });

  it('hands on what was said of the sounds, and notes what to look at', async () => {
    const { world: small, heard: told } = smallWorld(ownFolder());
    const making = {
      ...small,
      makePages: async (env: NodeJS.ProcessEnv) => {
        await small.makePages(env);
        return { code: 0, said: 'page built\nListen: 9 texts\nListen, note: a.mp3 is out of date\n' };
      },
    };
    await build(making);
    expect(told.said).toContain('Listen: 9 texts');
    expect(told.said).toContain('  Note: a.mp3 is out of date');
    expect(told.said.at(-1)).toBe('Done: 2 pages, 1 note above.');
  });
});

describe('the voice of this machine', () => {
  it('is none where the PATH has none, or where nobody wants it', async () => {
    expect(hasVoice({ PATH: '/nowhere' })).toBe(false);
    expect(await findSpeaker({ PATH: '/nowhere' })).toBeNull();
    expect(await findSpeaker({ ...process.env, PAILSIDE_SILENT: '1' })).toBeNull();
  });

  it('speaks into a file that holds sound', async ({ skip }) => {
    const speaker = await findSpeaker(process.env);
    if (speaker === null) return skip('espeak-ng is not on this machine');
    for (const lang of ['en', 'es']) {
      const voice = speaker.voiceOf(lang);
      if (voice === null) throw new Error(`There is no voice for ${lang}.`);
      const file = join(ownFolder(), `a.${voice.end}`);
      await voice.speak('16', file);
      expect(readFileSync(file).subarray(0, 4).toString('latin1')).toMatch(/^(?:OggS|RIFF|ID3|\xff\xfb)/);
      expect(readFileSync(file).length).toBeGreaterThan(1000);
      expect(existsSync(`${file}.wav`)).toBe(false);
    }
    expect(speaker.voiceOf('xx')).toBeNull();
  });
});
