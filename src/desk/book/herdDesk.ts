// The desk's address of the herd: its tables as they are written, and one change at a time.
import type { Hono } from 'hono';
import type { HerdAnswer } from '../../../shared/book/herdBook.ts';
import { openHerd, type HerdKeeper, type HerdSource } from './herdKeeper.ts';
import { readHerdPost } from './herdPost.ts';

type Lack = Extract<HerdAnswer, { ok: false }>['why'];
const STATUS: Readonly<Record<Lack, 400 | 409 | 422 | 507>> = {
  malformed: 400,
  changed: 409,
  faulty: 422,
  'not written': 507,
};

/** Adds `desk/herd` below `base`, which ends in `/`. The guard stands before it. */
export function addHerdDesk(
  app: Hono,
  base: string,
  source: HerdSource,
  herd: HerdKeeper = openHerd(source),
): void {
  app.get(`${base}desk/herd`, (c) => c.json(herd.read()));
  app.post(`${base}desk/herd`, async (c) => {
    const post = readHerdPost(await c.req.json().catch(() => null));
    const answer: HerdAnswer = post ? await herd.change(post) : { ok: false, why: 'malformed' };
    return c.json(answer, answer.ok ? 200 : STATUS[answer.why]);
  });
}
