// Measures the parts that are named, or all of them, and prints one table.
import { cpus } from 'node:os';
import { boardPart } from './board.ts';
import { bookPart } from './book.ts';
import { figuresPart } from './figures.ts';
import { table, type Line, type Part } from './line.ts';
import { herdPart } from './herd.ts';
import { livePart } from './live.ts';
import { packsPart } from './packs.ts';
import { paperPart } from './paper.ts';
import { sitePart } from './site.ts';
import { tripPart } from './trip.ts';
import { woodPart } from './wood.ts';

const PARTS: Readonly<Record<string, Part>> = {
  figures: figuresPart,
  herd: herdPart,
  wood: woodPart,
  site: sitePart,
  paper: paperPart,
  packs: packsPart,
  live: livePart,
  board: boardPart,
  book: bookPart,
  trip: tripPart,
};

const asked = process.argv.slice(2);
const unknown = asked.filter((name) => !(name in PARTS));
if (unknown.length > 0) {
  console.error(
    `There is no part ${unknown.map((name) => `"${name}"`).join(', ')}. There are: ${Object.keys(PARTS).join(', ')}.`,
  );
  process.exit(2);
}
const lines: Line[] = [];
for (const [name, part] of Object.entries(PARTS))
  if (asked.length === 0 || asked.includes(name)) lines.push(...(await part((line) => console.log(line))));

const machine = cpus();
console.log(
  `\n${machine.length} × ${machine[0]?.model ?? 'processor'}, Node ${process.version}. Ratio below 1: we are faster.\n`,
);
console.log(table(lines));
