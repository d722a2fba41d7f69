// How the tests run: everything that needs no built site at once, pages and print beside it once the site stands.
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vitest/config';

const NEEDS_SITE = ['tests/browser/**/*.test.ts', 'tests/outside/{pdf,paper,labels}.test.ts'];

export default defineConfig({
  test: {
    projects: [
      {
        // Drawings are rendered as the build renders them, to be read back.
        plugins: [svelte()],
        test: {
          name: 'plain',
          environment: 'node',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/bench/**', ...NEEDS_SITE],
          testTimeout: 120_000,
          hookTimeout: 60_000,
        },
      },
      {
        test: {
          name: 'site',
          environment: 'node',
          include: NEEDS_SITE,
          globalSetup: ['tests/support/builtSite.setup.ts'],
          // A browser a file is dear on two cores.
          maxWorkers: 1,
          testTimeout: 120_000,
          hookTimeout: 420_000,
        },
      },
    ],
  },
});
