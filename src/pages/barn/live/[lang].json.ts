// What an open page of the board needs to show new numbers in its language: words and the table of milks.
import type { APIRoute } from 'astro';
import { liveWords } from '../../../site/liveWords.ts';
import { openSite } from '../../../site/site.ts';

export const getStaticPaths = () => openSite().languages.map((lang) => ({ params: { lang } }));

export const GET: APIRoute = async ({ params }) =>
  new Response(JSON.stringify(await liveWords(params['lang'] ?? '')), {
    headers: { 'content-type': 'application/json; charset=utf-8' },
  });
