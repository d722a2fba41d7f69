// Restores two copies of a farm folder in turn until somebody kills it. Run by a test as a process of its own.
import { mkdtempSync } from 'node:fs';
import { join } from 'node:path';
import { makeCopy } from '../../../../src/desk/backup/copies.ts';
import { mendRestore, restoreCopy } from '../../../../src/desk/backup/restore.ts';

const [, , farm = '', folder = ''] = process.argv;
mendRestore(farm);
// Copies of what stands go to a folder of each run, so that the folder does not grow from run to run.
const own = mkdtempSync(join(folder, 'run-'));
await makeCopy(farm, own, '2026-05-19', Date.now());
process.stdout.write('begun\n');
for (let turn = 0; ; turn += 1) {
  const isFirst = turn % 2 === 0;
  const time = String(turn).padStart(6, '0');
  await restoreCopy({
    farm,
    folder: isFirst ? folder : own,
    name: isFirst ? '2026-05-20' : '2026-05-19',
    now_ms: Date.now(),
    today: '2026-05-21',
    time,
  });
}
