// A copy of a built site on a server that a test can stop, hold or make lie.
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { serve } from '@hono/node-server';
import { writeBoardWorker } from '../../src/build/boardOffline.ts';
import { deskApp, type DeskSettings } from '../../src/desk/serve.ts';
import type { TestSite } from './builtSite.ts';

/** What a server says to a request instead of the truth: nothing of its own, or an answer. */
export type Gate = (path: string) => Response | Promise<Response> | undefined;

/** A site that is served from a folder of its own. */
export interface ServedCopy {
  readonly folder: string;
  /** The address of a path below the site's base. */
  at(path: string): string;
  /** The paths that were asked for since this was last emptied, below the base. */
  readonly asked: string[];
  gate: Gate;
  /** Replaces text in files of the site, and makes the board's worker anew, as a later build would. */
  rebuild(paths: readonly string[], from: string, to: string): void;
  /** The server goes; the copy stays. */
  stop(): Promise<void>;
  /** The server comes back at the same address, if it has gone. */
  start(): Promise<void>;
  close(): Promise<void>;
}

/** Copies a built site and serves it. */
export async function serveCopy(site: TestSite, more: Partial<DeskSettings> = {}): Promise<ServedCopy> {
  const folder = mkdtempSync(join(tmpdir(), 'served-'));
  cpSync(site.dist, folder, { recursive: true });
  const app = deskApp({ dist: folder, prints: join(folder, 'none'), basePath: site.basePath, ...more });
  let server: ReturnType<typeof serve> | null = null;
  let port = 0;
  const copy: ServedCopy = {
    folder,
    at: (path) => `http://localhost:${port}${site.basePath}${path}`,
    asked: [],
    gate: () => undefined,
    rebuild(paths, from, to) {
      for (const path of paths) {
        const file = join(folder, path, 'index.html');
        writeFileSync(file, readFileSync(file, 'utf8').replaceAll(from, to));
      }
      writeBoardWorker(folder);
    },
    async start() {
      if (server) return;
      const answer = async (request: Request, env: object) => {
        const path = new URL(request.url).pathname.slice(site.basePath.length);
        copy.asked.push(path);
        return (await copy.gate(path)) ?? app.fetch(request, env);
      };
      server = serve({ fetch: answer, port, hostname: '127.0.0.1' });
      await new Promise((done) => server?.once('listening', done));
      port = (server.address() as AddressInfo).port;
    },
    async stop() {
      const going = server;
      server = null;
      if (!going) return;
      await new Promise<void>((done) => {
        going.close(() => done());
        if ('closeAllConnections' in going) going.closeAllConnections();
      });
    },
    async close() {
      app.close();
      await copy.stop();
      rmSync(folder, { recursive: true, force: true });
    },
  };
  await copy.start();
  return copy;
}
