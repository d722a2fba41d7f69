// Writes content/facts/outlook-backtest.yaml: how far off the outlook would have been. Run with node from the root.
import { writeFileSync } from 'node:fs';
import { stringify } from 'yaml';
import { allShapes, ofFarm, ofShape } from '../shared/outlook/backTests.ts';
import { SHAPES } from '../shared/outlook/simulatedHerd.ts';
import { openData } from '../support/handouts.ts';

const HEAD = `# How far off the outlook would have been: asked on every seventh day as if nothing later were written.
#   outlook_L  mean absolute error of its middle, L a day
#   plain_L    the same of the plain rule: as on the mean day of her last week
#   held       days that lay inside the 80 % range, out of \`days\`
# Written by tests/bench/outlookBackTest.ts; a test works the numbers out again.
`;

const folder = openData('herd-ampm');
if (folder === null) throw new Error('../shared/data/herd-ampm is not here: the real herd cannot be asked.');
const shapes = SHAPES.map((shape) => ({ shape, distances: ofShape(shape) }));
const facts = {
  real: {
    herd: 'Six dairy cows, not goats, milked a.m. and p.m. for one lactation.',
    source:
      'Data set milkman of the R package doBy (GPL-2 or later; not carried here), from Friggens et al. 2007, Journal of Dairy Science 90:5453. Calving dates are made up: the source counts days from calving.',
    ...ofFarm(folder),
  },
  simulated: {
    herd: 'Three herds of six for each shape of lactation, with steady and moody does and holes in the book.',
    source: 'Drawn by rules that stand in tests/shared/outlook/simulatedHerd.ts',
    shapes,
    together: allShapes(shapes.map(({ distances }) => distances)),
  },
};
writeFileSync(
  'content/facts/outlook-backtest.yaml',
  HEAD + stringify(facts, { lineWidth: 0, singleQuote: true }),
);
