// A whole desk in a process of its own, for tests that kill it: `node deskChild.ts ROOT PORT`.
import { join } from 'node:path';
import { openAccess } from '../../../src/desk/access/access.ts';
import { openBackups } from '../../../src/desk/backup/backups.ts';
import { mendAtStart } from '../../../src/desk/backup/mendAtStart.ts';
import { openKeeper } from '../../../src/desk/book/keeper.ts';
import { openDesk } from '../../../src/desk/serve.ts';

const [, , root = '', port = '0'] = process.argv;
const farm = join(root, 'farm');
const workshop = join(root, '.pailside');
const now_ms = () => Date.now();
const complain = (text: string) => void process.stderr.write(`${text}\n`);
const places = { root, farm, workshop, dist: join(root, 'dist'), prints: join(root, 'prints') };

await mendAtStart({ places, say: complain });
const access = openAccess({ workshop, lang: 'en', newWords: false, env: {}, now_ms });
const keeper = await openKeeper({ farm, now_ms, complain });
openBackups({ farm, workshop, now_ms, complain, look_ms: 50 });
const { dist, prints } = places;
const desk = await openDesk(
  { dist, prints, basePath: '/', access, book: { keeper, complain } },
  Number(port),
);
process.stdout.write(`${desk.url}\n`);
