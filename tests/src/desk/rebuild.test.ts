// The rebuilder: when it makes the site, when it holds still, and what it keeps of a failure. The build is injected.
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import {
  openRebuilder,
  type Rebuilt,
  type RebuildTimes,
  type RebuildWork,
} from '../../../src/desk/rebuild.ts';

const TIMES: RebuildTimes = {
  quiet: 4_000,
  longest: 30_000,
  apart: 10_000,
  printQuiet: 60_000,
  again: 60_000,
};
const START_ms = Date.UTC(2026, 4, 21, 12);
const NEW: Rebuilt = { ok: true, fresh: false };
const FAULT = {
  file: 'milkings/2026-05.csv',
  line: 4,
  column: 15,
  text: 'found "clovver"; nearest "clover"',
};
const FAULTY: Rebuilt = { ok: false, again: false, failure: { why: 'book', faults: [FAULT] } };

/** A world in which a making takes as long as it is told to and ends as it is told to. */
function quietWorld(more: { prints?: boolean; takes_ms?: number } = {}) {
  const log: string[] = [];
  const since = () => (Date.now() - START_ms) / 1000;
  const heard: boolean[] = [];
  const at = { ends: NEW as Rebuilt | Error, takes_ms: more.takes_ms ?? 2_000, running: 0, most: 0 };
  /** Takes its time, or ends early when it is stopped. */
  const lasting = (ms: number, signal: AbortSignal) =>
    new Promise<void>((done) => {
      const timer = setTimeout(done, ms);
      signal.addEventListener('abort', () => {
        clearTimeout(timer);
        // What is stopped takes a moment to go.
        setTimeout(done, 500);
      });
    });
  const one = async (name: string, ms: number, signal: AbortSignal) => {
    at.running += 1;
    at.most = Math.max(at.most, at.running);
    log.push(`${name} at ${since()}`);
    await lasting(ms, signal);
    log.push(`${signal.aborted ? 'stopped' : 'ended'} at ${since()}`);
    at.running -= 1;
  };
  const work: RebuildWork = {
    async build(signal) {
      await one('build', at.takes_ms, signal);
      if (at.ends instanceof Error) throw at.ends;
      return at.ends;
    },
    print: more.prints
      ? async (signal) => {
          await one('print', 5_000, signal);
          return null;
        }
      : undefined,
    stands_ms: () => null,
    now_ms: () => Date.now(),
  };
  const rebuilder = openRebuilder(work, null, TIMES);
  rebuilder.onEnd((isNew) => heard.push(isNew));
  return { rebuilder, log, at, heard };
}
const pass = (seconds: number) => vi.advanceTimersByTimeAsync(seconds * 1000);

beforeEach(() => void vi.useFakeTimers({ now: START_ms }));
afterEach(() => void vi.useRealTimers());

describe('a change', () => {
  it('makes the site once, after some quiet', async () => {
    const { rebuilder, log, heard } = quietWorld();
    for (const wait of [0, 1, 2, 3]) {
      await pass(wait);
      rebuilder.changed();
    }
    expect(rebuilder.state()).toMatchObject({ phase: 'waiting', behind_ms: START_ms });
    await pass(3.9);
    expect(log).toEqual([]);
    await pass(60);
    expect(log).toEqual(['build at 10', 'ended at 12']);
    expect(heard).toEqual([true]);
    expect(rebuilder.state()).toMatchObject({ phase: 'still', behind_ms: null, took_ms: 2000, failed: null });
  });

  it('does not wait for ever for quiet: an hour of milking has none', async () => {
    const { rebuilder, log } = quietWorld();
    for (let row = 0; row < 30; row += 1) {
      rebuilder.changed();
      await pass(3);
    }
    // Half a minute after the first row that is not in the site yet, at the latest.
    expect(log.filter((line) => line.startsWith('build'))).toEqual([
      'build at 30',
      'build at 60',
      'build at 90',
    ]);
  });

  it('during a making makes it once more, after a pause, and never two at once', async () => {
    const { rebuilder, log, at } = quietWorld();
    rebuilder.changed();
    await pass(5);
    expect(rebuilder.state().phase).toBe('building');
    rebuilder.changed();
    rebuilder.changed();
    await pass(60);
    expect(log).toEqual(['build at 4', 'ended at 6', 'build at 16', 'ended at 18']);
    expect(at.most).toBe(1);
    expect(rebuilder.state().behind_ms).toBeNull();
  });

  it('that was in the site already is no new site', async () => {
    const { rebuilder, at } = quietWorld({ prints: true });
    at.ends = { ok: true, fresh: true };
    rebuilder.changed();
    await pass(200);
    expect(rebuilder.state()).toMatchObject({ phase: 'still', behind_ms: null, took_ms: null });
  });
});

describe('a failure', () => {
  it('is kept, with the time and every fault, until a making goes well; it is not tried again without a change', async () => {
    const { rebuilder, log, at, heard } = quietWorld();
    at.ends = FAULTY;
    rebuilder.changed();
    await pass(600);
    expect(log).toHaveLength(2);
    expect(heard).toEqual([false]);
    expect(rebuilder.state()).toMatchObject({
      phase: 'still',
      behind_ms: START_ms,
      failed: { at_ms: START_ms + 6000, why: 'book', faults: [FAULT] },
    });
    at.ends = NEW;
    rebuilder.changed();
    await pass(3);
    // While the next is under way the old reason stands.
    expect(rebuilder.state().failed).not.toBeNull();
    await pass(10);
    expect(heard).toEqual([false, true]);
    expect(rebuilder.state()).toMatchObject({ phase: 'still', behind_ms: null, failed: null });
  });

  it('that may pass by itself is tried again after a while', async () => {
    const { rebuilder, log, at } = quietWorld();
    at.ends = { ok: false, again: true, failure: { why: 'busy', faults: [] } };
    rebuilder.changed();
    await pass(10);
    at.ends = NEW;
    await pass(60);
    expect(log).toEqual(['build at 4', 'ended at 6', 'build at 66', 'ended at 68']);
    expect(rebuilder.state().failed).toBeNull();
  });

  it('of ours is kept too, and the rebuilder goes on', async () => {
    const { rebuilder, at } = quietWorld();
    at.ends = new Error('a bolt is loose');
    rebuilder.changed();
    await pass(10);
    expect(rebuilder.state().failed).toMatchObject({ why: 'broken', faults: [{ text: 'a bolt is loose' }] });
    at.ends = NEW;
    rebuilder.changed();
    await pass(20);
    expect(rebuilder.state().failed).toBeNull();
  });

  it('with a change during it is tried again after the pause, without waiting for a third', async () => {
    const { rebuilder, log, at } = quietWorld();
    at.ends = FAULTY;
    rebuilder.changed();
    await pass(5);
    rebuilder.changed();
    at.ends = NEW;
    await pass(60);
    expect(log.at(-1)).toBe('ended at 18');
  });

  it('with which the desk was started is told from the start', () => {
    const began = { at_ms: START_ms, why: 'content' as const, faults: [FAULT] };
    const work = { build: () => Promise.resolve(NEW), stands_ms: () => 7, now_ms: () => Date.now() };
    expect(openRebuilder(work, began, TIMES).state()).toMatchObject({
      failed: began,
      behind_ms: START_ms,
      stands_ms: 7,
    });
  });
});

describe('the week’s sheets', () => {
  it('are printed once it has been quiet for a minute', async () => {
    const { rebuilder, log } = quietWorld({ prints: true });
    rebuilder.changed();
    await pass(50);
    rebuilder.changed();
    await pass(200);
    expect(log).toEqual([
      'build at 4',
      'ended at 6',
      'build at 54',
      'ended at 56',
      'print at 116',
      'ended at 121',
    ]);
  });

  it('wait for a site that can be made', async () => {
    const { rebuilder, log, at } = quietWorld({ prints: true });
    at.ends = FAULTY;
    rebuilder.changed();
    await pass(300);
    expect(log.filter((line) => line.startsWith('print'))).toEqual([]);
  });

  it('hold up no site: a change meanwhile makes it when they are through, never two at once', async () => {
    const { rebuilder, log, at } = quietWorld({ prints: true });
    rebuilder.changed();
    await pass(68);
    expect(rebuilder.state().phase).toBe('printing');
    rebuilder.changed();
    await pass(10);
    expect(log.slice(2)).toEqual(['print at 66', 'ended at 71', 'build at 72', 'ended at 74']);
    expect(at.most).toBe(1);
  });
});

describe('closing', () => {
  it('stops what is under way, waits until it has gone, and makes nothing more', async () => {
    const { rebuilder, log, at, heard } = quietWorld({ takes_ms: 20_000 });
    rebuilder.changed();
    await pass(6);
    rebuilder.changed();
    const closed = rebuilder.close().then(() => log.push('closed'));
    await pass(0.4);
    expect(log).toEqual(['build at 4']);
    await pass(200);
    await closed;
    expect(log).toEqual(['build at 4', 'stopped at 6.5', 'closed']);
    expect([at.running, heard]).toEqual([0, []]);
    rebuilder.changed();
    await pass(200);
    expect(log).toHaveLength(3);
  });

  it('before the quiet is over makes nothing', async () => {
    const { rebuilder, log } = quietWorld();
    rebuilder.changed();
    await rebuilder.close();
    await pass(200);
    expect(log).toEqual([]);
  });
});
