// How the site is built: static pages, one folder out, nothing fetched from elsewhere.
import mdx from '@astrojs/mdx';
import svelte from '@astrojs/svelte';
import { defineConfig } from 'astro/config';

export default defineConfig({
  output: 'static',
  base: process.env.BASE_PATH ?? '/',
  outDir: process.env.PAILSIDE_OUT ?? './dist',
  cacheDir: './.pailside/cache',
  trailingSlash: 'always',
  build: { format: 'directory', inlineStylesheets: 'never', assets: 'assets' },
  devToolbar: { enabled: false },
  integrations: [svelte(), mdx()],
});
