// Drawings and sheets are Svelte components; TypeScript in them is erased, not transformed.
import { vitePreprocess } from '@astrojs/svelte';

export default { preprocess: vitePreprocess() };
