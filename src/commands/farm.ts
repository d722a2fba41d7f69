// `npm run farm -- FOLDER`: lays out an empty farm folder and says what to do with it.
import { resolve } from 'node:path';
import { layOutFarm } from '../farm/layOut.ts';

const [, , named] = process.argv;
if (named === undefined || named === '' || named.startsWith('-')) {
  console.error('Say where the farm folder should be, for instance:  npm run farm -- ../our-farm');
  process.exit(2);
}
// npm moves to the project's folder; people name a folder from where they stand.
const dir = resolve(process.env['INIT_CWD'] ?? process.cwd(), named);
const laidOut = layOutFarm(dir);
if (!laidOut.ok) {
  console.error(`Nothing was laid out in ${dir}\n${laidOut.why}`);
  process.exit(1);
}
const shellPath = /^[\w./-]+$/.test(dir) ? dir : `'${dir.replaceAll("'", "'\\''")}'`;
console.log(`A farm folder is laid out in ${dir}

  README.txt     how to fill these in, column by column
  farm.yaml      the farm's name, clock and units
  does.csv       one row a doe
  kiddings.csv   one row each time a doe has kids
  treatments.csv one row each time a doe is treated and her milk is kept apart
  milkings/      the milk book; its first file is ${laidOut.files.at(-1)}

What to do next
  1. Open farm.yaml and write the farm's name; check the time zone and the units.
  2. Give each doe a row in does.csv, and her latest kidding one in kiddings.csv.
  3. Write the milkings into the milk book. A few days are enough to begin with.
  4. See your pages:

     FARM_DIR=${shellPath} npm start
`);
