// Import from a spreadsheet or from ICAR events: a file comes in, a preview goes out, and only what was confirmed is written.
import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Context, Hono } from 'hono';
import { readChoices } from '../../../shared/book/importChoices.ts';
import {
  NO_CHOICES,
  type ImportAnswer,
  type ImportChoices,
  type ImportPreview,
  type ImportRefusal,
  type ImportWritten,
  type PlannedRow,
  type PlannedTest,
  type Told,
} from '../../../shared/book/importTypes.ts';
import type { BookEntry } from '../../../shared/book/types.ts';
import { DESK_FOLDER } from '../../build/fingerprint.ts';
import { writeWhole } from '../wholeFile.ts';
import { readImportFile } from './importFile.ts';
import { importPreview, TooLong, type HeldFile } from './importPreview.ts';
import type { Keeper } from './keeper.ts';
import { addMilkTests } from './milkTestsFile.ts';

/** Which doe a name in a file means, as somebody once said: kept for the next file. */
const NAMES_FILE = 'import-names.json';
// A few people at most import at the same time.
const MOST_FILES = 4;
// So many rows go to the disk at once; entries from the barn come in between.
const ROWS_AT_ONCE = 500;
const LONGEST_NAME = 120;

/** Adds `desk/import/file`, `desk/import/plan` and `desk/import/write` below `base` (it ends in `/`). */
export function addImportDesk(
  app: Hono,
  base: string,
  { keeper, farm, now_ms }: { readonly keeper: Keeper; readonly farm: string; readonly now_ms: () => number },
): void {
  const files = new Map<string, HeldFile>();
  const names = join(farm, DESK_FOLDER, NAMES_FILE);

  const preview = async (held: HeldFile, choices: ImportChoices): Promise<ImportPreview> => {
    await keeper.outsideChange();
    return importPreview(held, keeper.book(), choices, readNames(names));
  };

  const answerOf = async (held: HeldFile, choices: ImportChoices): Promise<ImportAnswer> => {
    try {
      return { ok: true, preview: await preview(held, choices) };
    } catch (error) {
      if (!(error instanceof TooLong)) throw error;
      files.delete(held.hash);
      return { ok: false, why: 'unreadable', told: { key: 'file.tooBig', slots: {} } };
    }
  };

  app.post(`${base}desk/import/file`, async (c) => {
    const bytes = new Uint8Array(await c.req.arrayBuffer());
    const file = await readImportFile(bytes);
    if (file.kind === 'unreadable') return said(c, { ok: false, why: 'unreadable', told: file.told });
    const hash = createHash('sha256').update(bytes).digest('base64url').slice(0, 22);
    const held = { hash, name: (c.req.query('name') ?? '').slice(0, LONGEST_NAME), file };
    files.delete(hash);
    files.set(hash, held);
    for (const oldest of files.keys()) if (files.size > MOST_FILES) files.delete(oldest);
    return said(c, await answerOf(held, NO_CHOICES));
  });

  app.post(`${base}desk/import/plan`, async (c) => {
    const { held, choices } = await postOf(c, files);
    if (!held) return said(c, { ok: false, why: 'gone' });
    return said(c, await answerOf(held, choices));
  });

  app.post(`${base}desk/import/write`, async (c) => {
    const { held, choices, fingerprint } = await postOf(c, files);
    if (!held) return c.json({ ok: false, why: 'gone' } satisfies ImportWritten);
    const seen = await answerOf(held, choices);
    if (!seen.ok) return c.json({ ok: false, why: 'gone' } satisfies ImportWritten);
    const plan = seen.preview;
    if (plan.fingerprint !== fingerprint)
      return c.json({ ok: false, why: 'changed', preview: plan } satisfies ImportWritten);
    const refused: ImportRefusal[] = [];
    const written = await writeRows(plan, { keeper, now_ms }, refused);
    const tests = plan.tests.filter(({ kind }) => kind === 'new');
    const lack = tests.length > 0 ? await putTests(farm, tests, keeper) : null;
    if (lack) refused.push({ line: tests[0]?.line ?? 1, told: lack });
    keepNames(names, plan);
    const after = await preview(held, { ...choices, corrections: [] });
    const told = { written, tests: lack ? 0 : tests.length, refused };
    return c.json({ ok: true, ...told, preview: after } satisfies ImportWritten);
  });
}

/** Adds the milk tests while nothing else is written; says why where that fails. */
function putTests(farm: string, tests: readonly PlannedTest[], keeper: Keeper): Promise<Told | null> {
  const put = () => Promise.resolve(addMilkTests(farm, tests));
  return keeper.inTurn(put).catch(() => ({ key: 'refusal.disk', slots: {} }));
}

const said = (c: Context, answer: ImportAnswer): Response => c.json(answer);

async function postOf(c: Context, files: ReadonlyMap<string, HeldFile>) {
  const body: unknown = await c.req.json().catch(() => null);
  const post = (typeof body === 'object' && body !== null ? body : {}) as Record<string, unknown>;
  const held = typeof post['hash'] === 'string' ? files.get(post['hash']) : undefined;
  return { held, choices: readChoices(post['choices']), fingerprint: post['fingerprint'] };
}

/** Writes the chosen rows through the book's one writer; what it refuses is told with its line. */
async function writeRows(
  plan: ImportPreview,
  { keeper, now_ms }: { keeper: Keeper; now_ms: () => number },
  refused: ImportRefusal[],
): Promise<number> {
  const chosen = plan.rows.filter((row) => row.chosen);
  let written = 0;
  for (let from = 0; from < chosen.length; from += ROWS_AT_ONCE) {
    const part = chosen.slice(from, from + ROWS_AT_ONCE);
    const sent_ms = now_ms();
    const entries = part.map((row) => entryOf(row, plan.hash, sent_ms));
    const answers = await keeper.write({ sent_ms, entries }).catch(() => null);
    if (answers === null) {
      // A full disk, or a book that somebody is just replacing: what went before is kept and will be known next time.
      refused.push({ line: part[0]?.line ?? 0, told: { key: 'refusal.disk', slots: {} } });
      return written;
    }
    answers.forEach((answer, index) => {
      if (answer.kept) written += 1;
      else
        refused.push({
          line: part[index]?.line ?? 0,
          told: { key: `refusal.${refusalKey(answer.why)}`, slots: {} },
        });
    });
  }
  return written;
}

const refusalKey = (why: string) => why.replace(/ (\w)/g, (_, letter: string) => letter.toUpperCase());

// The id follows from the file, the cell, and what is written over what: sent twice it is one row, whoever sends it.
function entryOf(row: PlannedRow, hash: string, now_ms: number): BookEntry {
  const { key, doe, date, milking, amount, unit, use, saidKept: sure, note, saw } = row;
  const seed = JSON.stringify([hash, key, doe, date, milking, amount, unit, use, saw]);
  const id = createHash('sha256').update(seed).digest().subarray(0, 16).toString('base64url');
  // A time from the file holds where nothing stood; a correction that somebody chose is written now.
  const entered_ms = row.kind === 'new' ? Math.min(row.entered_ms ?? now_ms, now_ms) : now_ms;
  return { id, doe, date, milking, amount, unit, use, note, sure, saw, entered_ms };
}

function readNames(path: string): Readonly<Record<string, string>> {
  if (!existsSync(path)) return {};
  try {
    const kept: unknown = JSON.parse(readFileSync(path, 'utf8'));
    if (typeof kept !== 'object' || kept === null) return {};
    return Object.fromEntries(
      Object.entries(kept).filter((pair): pair is [string, string] => typeof pair[1] === 'string'),
    );
  } catch {
    // A convenience alone: without it the page asks again.
    return {};
  }
}

function keepNames(path: string, { unknown }: ImportPreview): void {
  const named = unknown.filter(({ chosen }) => chosen !== null && chosen !== '');
  if (named.length === 0) return;
  const all = { ...readNames(path), ...Object.fromEntries(named.map(({ text, chosen }) => [text, chosen])) };
  writeWhole(path, `${JSON.stringify(all, null, 2)}\n`);
}
