// Data flows one way: who may import whom.
import { describe, expect, it } from 'vitest';
import { codeFiles } from '../support/sources.ts';
import { importFaults } from './importTable.ts';

describe('the import table', () => {
  it('is kept by every .ts, .svelte, .astro and .mdx file', () => {
    const files = codeFiles();
    expect(files.length).toBeGreaterThan(50);
    expect(files.flatMap((path) => importFaults(path))).toEqual([]);
  });

  it.each([
    ['shared/herd/x.ts', "import fs from 'node:fs';"],
    ['shared/herd/x.ts', "import { x } from '../../src/farm/readFarm.ts';"],
    ['shared/herd/x.ts', "export { z } from 'zod';"],
    ['shared/herd/x.ts', "const x = await import('zod');"],
    ['shared/herd/x.ts', "type X = import('zod').ZodType;"],
    ['src/components/X.svelte', "<script lang=\"ts\">\n  import * as z from 'zod';\n</script>"],
    ['src/components/board/X.astro', "---\nimport { openSite } from '../../site/site.ts';\n---\n"],
    ['src/components/board/X.astro', "---\nimport { href } from '../../site/site.ts';\n---\n<script>import 'node:fs';</script>"],
    ['src/site/x.ts', "import x from '../pages/figures.json.ts';"],
    ['src/farm/x.ts', "import { serve } from '../desk/serve.ts';"],
    ['src/pages/x.astro', "---\nimport { printSheets } from '../print/printSheets.ts';\n---\n"],
    ['content/questions/en/x.mdx', "---\nquestion: x\n---\n\nimport Jar from '../../../src/components/drawings/Jar.svelte';\n"],
    ['shared/sheet/x.ts', "import { judge } from '../reading/judge.ts';"],
    ['src/components/bench/X.svelte', "<script lang=\"ts\">\n  import { judge } from '../../../shared/reading/judge.ts';\n</script>"],
    ['src/nowhere/x.ts', "import 'node:fs';"],
  ])('catches %s with %j', (path, text) => {
    expect(importFaults(path, text)).toHaveLength(1);
  }); // prettier-ignore

  it.each([
    [
      'shared/herd/x.ts',
      "import Fraction from 'fraction.js'; // import 'zod'\nconst text = \"import 'zod'\";",
    ],
    ['src/components/board/X.astro', "---\nimport { href, wordsOf } from '../../site/site.ts';\n---\n"],
    ['src/commands/x.ts', "import { serve } from '../desk/serve.ts';"],
    ['content/questions/en/x.mdx', '---\nimport: a word\n---\n\nMilk is important.\n'],
  ])('lets %s be with %j', (path, text) => {
    expect(importFaults(path, text)).toEqual([]);
  });
});
