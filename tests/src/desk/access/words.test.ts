// The words, the cookie for them, and the patience with wrong ones.
import { readFileSync, statSync, chmodSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plainWords } from '../../../../shared/book/access.ts';
import { areWords, makeWords, openSecrets, WORD_COUNT } from '../../../../src/desk/access/secrets.ts';
import { countTries } from '../../../../src/desk/access/tries.ts';
import { WORD_LISTS } from '../../../../src/desk/access/wordLists.ts';
import { ownFolder } from '../../build/smallFarm.ts';
import { cookieOf, deskOnLan } from './onLan.ts';

const DAY_ms = 86_400_000;

describe('the word lists', () => {
  it.each(Object.entries(WORD_LISTS))('%s: five of them are more than 40 bits, each word easy to type', (_, list) => {
    expect(new Set(list).size).toBe(list.length);
    expect(WORD_COUNT * Math.log2(list.length)).toBeGreaterThan(40);
    expect(list.filter((word) => !/^[a-z]{3,9}$/.test(word))).toEqual([]);
  }); // prettier-ignore

  it('gives every word its chance', () => {
    const drawn = new Set(Array.from({ length: 1_000 }, () => makeWords('es')).flat());
    // 5,000 draws of some 350 leave one out once in 4,000 runs of this test.
    expect(drawn.size).toBeGreaterThan((WORD_LISTS['es']?.length ?? 0) - 3);
    expect(makeWords('hmn').every((word) => WORD_LISTS['en']?.includes(word))).toBe(true);
  });
});

describe('openSecrets', () => {
  const path = () => join(ownFolder(), '.pailside', 'access.json');

  it('makes the words once, for this user alone', () => {
    const file = path();
    const made = openSecrets(file, { lang: 'en', anew: false });
    expect(statSync(file).mode & 0o777).toBe(0o600);
    expect(openSecrets(file, { lang: 'es', anew: false })).toEqual(made);
    chmodSync(file, 0o644);
    openSecrets(file, { lang: 'en', anew: false });
    expect(statSync(file).mode & 0o777).toBe(0o600);
  });

  it('makes others, with another key, where new ones are wanted', () => {
    const file = path();
    const first = openSecrets(file, { lang: 'en', anew: false });
    const second = openSecrets(file, { lang: 'en', anew: true });
    expect(second.words).not.toEqual(first.words);
    expect(Buffer.from(second.key).equals(Buffer.from(first.key))).toBe(false);
    expect(second.desk).toBe(first.desk);
    expect(openSecrets(file, { lang: 'en', anew: false })).toEqual(second);
  });

  it('makes the words anew where a power cut left half a file', () => {
    const file = path();
    openSecrets(file, { lang: 'en', anew: false });
    const text = readFileSync(file, 'utf8');
    for (const torn of ['', text.slice(0, 40), '{}', 'null', text.replace(/"key":"..../, '"key":"')]) {
      writeFileSync(file, torn);
      const made = openSecrets(file, { lang: 'en', anew: false });
      expect(made.words).toHaveLength(WORD_COUNT);
      expect(readFileSync(file, 'utf8')).not.toBe(torn);
    }
  });

  it('takes the words however they are written, and no others', () => {
    const secrets = { words: ['corral', 'balcon', 'miel', 'noria', 'trigo'], key: new Uint8Array(32), desk: '000000000000' }; // prettier-ignore
    for (const written of ['corral balcon miel noria trigo', ' Corral-BALCÓN-miel--noria trigo\n', 'CorralBalcónMielNoriaTrigo', 'corral, balcon, miel, noria, trigo.'])
      expect(areWords(secrets, written)).toBe(true);
    for (const written of ['', 'corral balcon miel noria', 'balcon corral miel noria trigo', 'corral balcon miel noria trigo uva'])
      expect(areWords(secrets, written)).toBe(false);
    fc.assert(fc.property(fc.string(), (text) => areWords(secrets, text) === (plainWords(text) === 'corralbalconmielnoriatrigo')));
  }); // prettier-ignore
});

describe('POST desk/words', () => {
  it('gives the phone that says them a cookie that opens the Milk book', async () => {
    const { ask, post, words } = deskOnLan('/visit');
    const answer = await post('desk/words', { words: words.join(' ').toUpperCase() });
    expect([answer.status, await answer.json()]).toEqual([200, { ok: true, who: 'known' }]);
    expect(answer.headers.get('Set-Cookie')).toMatch(/^pailside-[0-9a-f]{12}=[^;]+; Max-Age=34560000; Path=\/visit\/; HttpOnly; SameSite=Strict$/); // prettier-ignore
    const headers = { Cookie: cookieOf(answer) };
    expect(await (await ask('desk/who', { headers })).json()).toMatchObject({ who: 'known' });
    expect((await ask('desk/none', { headers })).status).toBe(404);
    // The words and the code are shown on the desk's own machine only.
    expect((await ask('desk/invitation', { headers })).status).toBe(403);
  });

  it('takes no cookie that was changed, made elsewhere, given for other words, or that is too old', async () => {
    const { root, ask, post, words, clock } = deskOnLan();
    const cookie = cookieOf(await post('desk/words', { words: words.join(' ') }));
    const who = async (text: string) => (await (await ask('desk/who', { headers: { Cookie: text } })).json()) as { who: string }; // prettier-ignore
    const [name = '', value = ''] = cookie.split('=', 2);
    for (let at = 0; at < value.length; at += 7)
      expect((await who(`${name}=${value.slice(0, at)}${value[at] === 'A' ? 'B' : 'A'}${value.slice(at + 1)}`)).who).toBe('visitor'); // prettier-ignore
    for (const odd of [
      '',
      `${name}=`,
      `${name}=1-9999999999-x`,
      `other=${value}`,
      `${name}=${'x'.repeat(5_000)}`,
    ])
      expect((await who(odd)).who).toBe('visitor');
    expect((await who(`a=b; ${cookie}; c=d`)).who).toBe('known');
    const elsewhere = deskOnLan();
    expect((await (await elsewhere.ask('desk/who', { headers: { Cookie: cookie } })).json()) as object).toMatchObject({ who: 'visitor' }); // prettier-ignore
    clock.ms += 399 * DAY_ms;
    expect((await who(cookie)).who).toBe('known');
    clock.ms += 2 * DAY_ms;
    expect((await who(cookie)).who).toBe('visitor');
    clock.ms -= 2 * DAY_ms;
    const again = deskOnLan('/', { workshop: root, newWords: true });
    expect(again.words).not.toEqual(words);
    expect(await (await again.ask('desk/who', { headers: { Cookie: cookie } })).json()).toMatchObject({ who: 'visitor' }); // prettier-ignore
  });

  it('gives a phone that is used its cookie anew each month', async () => {
    const { ask, post, words, clock } = deskOnLan();
    const cookie = cookieOf(await post('desk/words', { words: words.join(' ') }));
    const asked = () => ask('desk/who', { headers: { Cookie: cookie } });
    expect((await asked()).headers.get('Set-Cookie')).toBeNull();
    clock.ms += 31 * DAY_ms;
    expect(cookieOf(await asked())).toMatch(/^pailside-/);
  });

  it('says what is wrong, and never the words', async () => {
    const { post, ask, words } = deskOnLan();
    for (const body of [{ words: 'goat' }, { words: 7 }, {}, [], 'x']) {
      const answer = await post('desk/words', body, {
        from: `10.0.0.${String(JSON.stringify(body).length)}`,
      });
      const text = await answer.text();
      expect([answer.status, text]).toEqual([403, '{"ok":false,"why":"wrong"}']);
      expect(answer.headers.get('Set-Cookie')).toBeNull();
      for (const word of words) expect(text).not.toContain(word);
    }
    const broken = await ask('desk/words', { method: 'POST', body: '{', headers: { 'Content-Type': 'application/json', Origin: 'http://192.168.1.5:4173' } }); // prettier-ignore
    expect(broken.status).toBe(403);
  });

  it('is closed on a desk that serves its own machine alone, and needless on that machine', async () => {
    const { post } = deskOnLan();
    const here = { from: '127.0.0.1', at: '127.0.0.1', host: 'localhost:4173' };
    expect(await (await post('desk/words', { words: 'goat' }, here)).json()).toEqual({
      ok: true,
      who: 'here',
    });
  });

  it('makes wrong tries wait, and does not look at the words meanwhile', async () => {
    const { post, words, clock } = deskOnLan();
    const wrong = () => post('desk/words', { words: 'goat' });
    const right = (from?: string) => post('desk/words', { words: words.join(' ') }, from ? { from } : {});
    for (let tries = 0; tries < 4; tries += 1) expect((await wrong()).status).toBe(403);
    const late = await right();
    expect([late.status, late.headers.get('Retry-After'), await late.json()]).toEqual([429, '2', { ok: false, why: 'wait', wait_s: 2 }]); // prettier-ignore
    // Another phone does not wait for this one.
    expect((await right('192.168.1.77')).status).toBe(200);
    clock.ms += 2_001;
    expect((await right()).status).toBe(200);
    expect((await wrong()).status).toBe(403);
  });

  it('looks at a hundred tries at once one by one', async () => {
    const { post } = deskOnLan();
    const answers = await Promise.all(
      Array.from({ length: 100 }, () => post('desk/words', { words: 'goat' })),
    );
    expect(answers.filter(({ status }) => status === 403)).toHaveLength(4);
    expect(answers.filter(({ status }) => status === 429)).toHaveLength(96);
  });
});

describe('countTries', () => {
  it('lets each wait grow up to five minutes, and forgets after an hour', () => {
    let now = 5_000_000;
    const tries = countTries(() => now);
    const waits: number[] = [];
    for (let count = 0; count < 14; count += 1) {
      tries.wrong('10.0.0.1');
      waits.push(tries.wait_ms('10.0.0.1') / 1000);
      now += tries.wait_ms('10.0.0.1');
    }
    expect(waits).toEqual([0, 0, 0, 2, 4, 8, 16, 32, 64, 128, 256, 300, 300, 300]);
    now += 3_600_001;
    tries.wrong('10.0.0.1');
    expect(tries.wait_ms('10.0.0.1')).toBe(0);
  });

  it('slows many addresses together, never for more than a minute, and remembers 500 of them', () => {
    const now = 5_000_000;
    const tries = countTries(() => now);
    for (let one = 0; one < 30; one += 1) tries.wrong(`10.0.1.${one}`);
    expect(tries.wait_ms('10.0.2.1')).toBe(0);
    for (let one = 0; one < 100_000; one += 1)
      tries.wrong(`10.${one >> 16}.${(one >> 8) & 255}.${one & 255}`);
    expect(tries.wait_ms('172.16.0.9')).toBe(60_000);
  });

  it('counts all addresses of one IPv6 network as one', () => {
    const tries = countTries(() => 5_000_000);
    for (const host of ['fd00:1:2:3::1', 'fd00:1:2:3:4:5:6:7', 'fd00:1:2:3::9', 'fd00:1:2:3:ffff::2']) tries.wrong(host);
    expect(tries.wait_ms('fd00:1:2:3::abcd')).toBe(2_000);
    expect(tries.wait_ms('fd00:1:2:4::abcd')).toBe(0);
    for (let count = 0; count < 4; count += 1) tries.wrong('fd00::1');
    expect(tries.wait_ms('fd00:0:0:0:9::')).toBe(2_000);
  }); // prettier-ignore

  it('locks nobody out for years when the clock was wrong', () => {
    let now = Date.UTC(2060, 0, 1);
    const tries = countTries(() => now);
    for (let count = 0; count < 40; count += 1) tries.wrong('10.0.0.1');
    now = Date.UTC(2026, 0, 1);
    expect(tries.wait_ms('10.0.0.1')).toBe(0);
  });
});
