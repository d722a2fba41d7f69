// `npm run check`: form, lint, types and unused code, one after the other, with one summary.
import { runTool } from '../build/tool.ts';
import { ROOT } from '../build/places.ts';

const CHECKS: readonly { name: string; tool: string; args: readonly string[] }[] = [
  { name: 'form (prettier)', tool: 'prettier', args: ['--check', '.'] },
  { name: 'lint (eslint)', tool: 'eslint', args: ['.'] },
  { name: 'pages and types (astro check)', tool: 'astro', args: ['check'] },
  { name: 'drawings (svelte-check)', tool: 'svelte-check', args: ['--tsconfig', './tsconfig.json'] },
  { name: 'unused code (knip)', tool: 'knip', args: [] },
];

const summary: string[] = [];
for (const { name, tool, args } of CHECKS) {
  const start_ms = Date.now();
  console.log(`\n== ${name}`);
  const { code } = await runTool(ROOT, tool, args, { show: true });
  const took_s = ((Date.now() - start_ms) / 1000).toFixed(1);
  summary.push(`${code === 0 ? 'clean ' : 'FAULTS'}  ${name} (${took_s} s)`);
  if (code !== 0) process.exitCode = 1;
}
console.log(`\n${summary.join('\n')}`);
