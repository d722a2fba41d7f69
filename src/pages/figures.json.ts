// Every number of the site in one file, by the contract.
import type { APIRoute } from 'astro';
import { openSite } from '../site/site.ts';

export const GET: APIRoute = () =>
  new Response(`${JSON.stringify(openSite().figures, null, 2)}\n`, {
    headers: { 'content-type': 'application/json; charset=utf-8' },
  });
