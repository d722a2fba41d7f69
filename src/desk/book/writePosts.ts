// Writes the posts that wait, all of them with one turn of the disk, and tells each what became of it.
import type { EntryAnswer, EntryPost } from '../../../shared/book/types.ts';
import { dayAt, momentWriter } from '../../farm/entered.ts';
import type { WrittenRow } from '../entryEvent.ts';
import { Locked } from './commit.ts';
import { OtherLength } from './disk.ts';
import type { Follower, WrittenGroup } from './follow.ts';
import { fileMark } from './folderMarks.ts';
import type { Held } from './held.ts';
import { journalFile } from './journal.ts';
import { openJudge, type NewRow, type Ruling } from './judge.ts';
import { monthFile } from './monthFile.ts';

/** A post that waits for the disk. */
export interface WaitingPost {
  readonly post: EntryPost;
  readonly kept: (answers: EntryAnswer[]) => void;
  readonly failed: (error: unknown) => void;
}

/** What posts are written with. */
export interface Writing {
  readonly farm: string;
  readonly now_ms: () => number;
  readonly follower: Follower;
  /** Hears of rows that are on disk. */
  readonly tell: (rows: readonly WrittenRow[]) => void;
}

/** Thrown where nobody can say who is a doe: the herd has never been readable. */
export class NoHerd extends Error {}

const MOST_TRIES = 4;

/** Judges the posts and writes what may be written. */
export async function writePosts(posts: readonly WaitingPost[], writing: Writing): Promise<void> {
  const { follower, now_ms } = writing;
  const markOfId = follower.markOfId;
  const locked = new Set<string>();
  for (let tries = 1; ; tries += 1) {
    await follower.committer.clean();
    const held = await follower.look();
    if (held.isDoe === null) throw new NoHerd();
    const judge = openJudge({
      held,
      now_ms: now_ms(),
      momentText: momentWriter(held.farm.timeZone),
      markOfId,
    });
    const rulings = posts.map(({ post }) => post.entries.map((entry) => judge(entry, post.sent_ms)));
    const rows = rulings.flat().flatMap((ruling) => ('row' in ruling ? [ruling.row] : []));
    const error = rows.length > 0 ? await put(held, rows, { ...writing, locked }) : null;
    // A file that is locked is passed over; its rows go into the desk's own.
    if (error instanceof Locked && !locked.has(error.file)) {
      locked.add(error.file);
      tries -= 1;
      continue;
    }
    // Somebody else has written into a file in this very moment: look again.
    if (error instanceof OtherLength && tries < MOST_TRIES) {
      follower.forget();
      continue;
    }
    posts.forEach((waiting, index) => answer(waiting, rulings[index] ?? [], markOfId, error));
    return;
  }
}

function answer(
  { post, kept, failed }: WaitingPost,
  rulings: readonly Ruling[],
  markOfId: (id: string) => string | undefined,
  error: unknown,
): void {
  const answers = rulings.flatMap((ruling, index): EntryAnswer[] => {
    if ('answer' in ruling) return [ruling.answer];
    if ('early' in ruling) return [];
    const id = post.entries[index]?.id ?? '';
    const mark = markOfId(id);
    return mark === undefined ? [] : [{ id, kept: true, mark }];
  });
  // A post that is kept in part is answered when it comes again: what is kept then has its answer already.
  const early = rulings.filter((ruling) => 'early' in ruling).length;
  if (answers.length + early === rulings.length) kept(answers);
  else failed(error);
}

/** Writes rows, month by month; returns what stopped it, of which nothing stays. */
async function put(
  held: Held,
  rows: readonly NewRow[],
  writing: Writing & { readonly locked: ReadonlySet<string> },
): Promise<unknown> {
  const { farm, now_ms, follower, tell, locked } = writing;
  const groups: WrittenGroup[] = [];
  try {
    for (const [month, own] of Map.groupBy(rows, (row) => row.month)) {
      let to = monthFile(farm, month, locked);
      // A torn row of ours must be whole before another one stands behind it.
      if (to.tail !== '') await follower.mend(to.file).then(() => (to = monthFile(farm, month, locked)));
      const entries = own.map(({ journal }) => ({ ...journal, file: to.file }));
      groups.push({ to, rows: own, entries, markBefore: fileMark(farm, to.file) });
    }
  } catch (error) {
    return error;
  }
  const year = dayAt(now_ms(), held.farm.timeZone).slice(0, 4);
  const { kept, error } = await follower.committer.commit(journalFile(year), groups);
  const written: WrittenRow[] = [];
  for (const group of groups.slice(0, kept)) {
    follower.wrote(group);
    for (const { entry, row } of group.rows)
      written.push({
        doe: row.doe,
        date: entry.date,
        milking: row.milking,
        amount: row.amount,
        use: row.use,
      });
  }
  if (written.length > 0) tell(written);
  return error;
}
