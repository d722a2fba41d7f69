// The words and fronts of the sheets in one language, for a print room whose page is in another.
import type { APIRoute } from 'astro';
import { tongueOf } from '../../site/printRoom.ts';
import { openSite } from '../../site/site.ts';

export const getStaticPaths = () => openSite().languages.map((lang) => ({ params: { lang } }));

export const GET: APIRoute = ({ params }) =>
  new Response(JSON.stringify(tongueOf(params['lang'] ?? '')), {
    headers: { 'content-type': 'application/json; charset=utf-8' },
  });
