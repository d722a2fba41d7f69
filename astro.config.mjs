// How the site is built: static pages, one folder out, nothing fetched from elsewhere.
import mdx from '@astrojs/mdx';
import svelte from '@astrojs/svelte';
import { defineConfig } from 'astro/config';
import { offline } from './src/build/offline.ts';
import { sound } from './src/build/sound.ts';

export default defineConfig({
  output: 'static',
  base: process.env.BASE_PATH ?? '/',
  outDir: process.env.PAILSIDE_OUT ?? './dist',
  cacheDir: './.pailside/cache',
  trailingSlash: 'always',
  build: { format: 'directory', inlineStylesheets: 'never', assets: 'assets' },
  devToolbar: { enabled: false },
  // The workers are made last, of files that then stay as they are.
  integrations: [svelte(), mdx(), sound(), offline()],
  vite: {
    build: {
      // Scripts stay files of their own, so that a policy of content can name their place.
      assetsInlineLimit: 0,
      // What every drawing is cut with travels together: small files of their own press badly.
      rolldownOptions: {
        output: {
          codeSplitting: {
            groups: [
              {
                name: 'cut',
                test: /drawings\/(?:Print\.svelte|inks\.ts|pieces\/Block\.svelte)|drawing\/(?:wobble|gouges|outline)\.ts/,
              },
            ],
          },
        },
      },
    },
  },
});
