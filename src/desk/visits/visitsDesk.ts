// The desk's address of the visits: those on file with their schools, and one change at a time. The guard stands before it.
import type { Hono } from 'hono';
import type { VisitAnswer, VisitPost } from '../../../shared/trip/visits/deskVisits.ts';
import { VISIT_STATES } from '../../../shared/trip/visitTypes.ts';
import { openVisits } from './visitKeeper.ts';

type Lack = Extract<VisitAnswer, { ok: false }>['why'];
const STATUS: Readonly<Record<Lack, 400 | 409 | 422 | 507>> = {
  malformed: 400,
  changed: 409,
  faulty: 422,
  'not written': 507,
};
// A visit is twenty lines; nobody needs a book there.
const LONGEST_TEXT = 8_000;
const LONGEST_NAME = 300;

/** Adds `desk/visits` of a farm folder below `base`, which ends in `/`. */
export function addVisitsDesk(app: Hono, base: string, farm: string): void {
  const visits = openVisits(farm);
  app.get(`${base}desk/visits`, (c) => c.json(visits.read()));
  app.post(`${base}desk/visits`, async (c) => {
    const post = readVisitPost(await c.req.json().catch(() => null));
    const answer: VisitAnswer = post ? await visits.change(post) : { ok: false, why: 'malformed' };
    return c.json(answer, answer.ok ? 200 : STATUS[answer.why]);
  });
}

/** A change from JSON that anybody may have sent; null where it is none. */
function readVisitPost(value: unknown): VisitPost | null {
  if (typeof value !== 'object' || value === null) return null;
  const { kind, text, file, state, saw } = value as Record<string, unknown>;
  const isShort = (one: unknown, most: number): one is string =>
    typeof one === 'string' && one.length <= most;
  if (kind === 'add') return isShort(text, LONGEST_TEXT) && text !== '' ? { kind, text } : null;
  const known = VISIT_STATES.find((one) => one === state);
  if (kind !== 'state' || !known || !isShort(file, LONGEST_NAME) || !isShort(saw, LONGEST_NAME)) return null;
  return { kind, file, state: known, saw };
}
