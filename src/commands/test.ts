// `npm test`: every test, or those whose names are given, and one closing line.
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT } from '../build/places.ts';
import { closingLine, type TestRecord } from '../build/testCount.ts';
import { runTool } from '../build/tool.ts';

const record = join(ROOT, '.pailside', 'test-results.json');
rmSync(record, { force: true });

const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${record}`];
const { code } = await runTool(ROOT, 'vitest', ['run', ...reporters, ...process.argv.slice(2)], {
  show: true,
});

if (existsSync(record))
  console.log(`\n${closingLine(JSON.parse(readFileSync(record, 'utf8')) as TestRecord)}`);
else console.error('\nThe test runner ended before it wrote its record.');
process.exitCode = code !== 0 || !existsSync(record) ? code || 1 : 0;
