// A desk over a copy of the demo farm, with the Milk book open for writing.
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openKeeper, type Keeper, type KeeperSettings } from '../../src/desk/book/keeper.ts';
import { openDesk, type DeskSettings } from '../../src/desk/serve.ts';
import { ROOT } from '../../src/build/places.ts';

/** A desk that listens on this machine. */
export interface BookDesk {
  /** Its address up to and with the base path. */
  readonly url: string;
  /** The farm folder, gone once the desk is closed. */
  readonly farm: string;
  readonly keeper: Keeper;
  /** What the coordinator was told. */
  readonly complaints: readonly string[];
  close(): Promise<void>;
}

/** What a test may set. */
export interface BookDeskSettings {
  /** The built site; a folder without one serves the desk's own addresses alone. */
  readonly dist?: string;
  /** The farm to copy; without it the demo farm. */
  readonly from?: string;
  readonly keeper?: Partial<KeeperSettings>;
  readonly more?: Partial<DeskSettings>;
  readonly port?: number;
  readonly host?: string;
}

/** Opens a desk over a copy of a farm. */
export async function openBookDesk(settings: BookDeskSettings = {}): Promise<BookDesk> {
  const { dist, from = join(ROOT, 'content', 'farm'), more, port = 0, host } = settings;
  const folder = mkdtempSync(join(tmpdir(), 'book-desk-'));
  const farm = join(folder, 'farm');
  cpSync(from, farm, { recursive: true });
  const complaints: string[] = [];
  const complain = (text: string) => void complaints.push(text);
  const live = { farm, now_ms: () => Date.now(), complain };
  const keeper = await openKeeper({ ...live, quiet_ms: 30, ...settings.keeper });
  const site = { dist: dist ?? join(folder, 'dist'), prints: join(folder, 'prints'), basePath: '/' };
  const desk = await openDesk({ ...site, live, book: { keeper, complain }, ...more }, port, host);
  return {
    url: desk.url,
    farm,
    keeper,
    complaints,
    async close() {
      await desk.close();
      await keeper.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
