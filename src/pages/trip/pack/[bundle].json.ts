// The lessons and sheets of one band in one language, fetched by the pack's page.
import type { APIRoute } from 'astro';
import { bundlePaths, packBundle } from '../../../site/tripPack.ts';

export const getStaticPaths = () =>
  bundlePaths().map(({ band, lang }) => ({ params: { bundle: `${band}-${lang}` }, props: { band, lang } }));

export const GET: APIRoute = ({ props }) =>
  new Response(JSON.stringify(packBundle(props['band'], props['lang'])), {
    headers: { 'content-type': 'application/json; charset=utf-8' },
  });
