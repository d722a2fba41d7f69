// What plans a trip on this farm, as a file: for the desk and the command, which read no farm themselves.
import type { APIRoute } from 'astro';
import { openSite } from '../../../site/site.ts';
import { packGround, packTongue } from '../../../site/tripPack.ts';

export const GET: APIRoute = () => {
  const tongues = openSite().languages.map((lang) => packTongue(lang, ['trip-pack', 'trip']));
  return new Response(`${JSON.stringify({ ...packGround(), tongues })}\n`, {
    headers: { 'content-type': 'application/json; charset=utf-8' },
  });
};
