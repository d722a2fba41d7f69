// The shelf of sheets as a file, for who orders a pack without opening the page.
import type { APIRoute } from 'astro';
import { printShelf } from '../../site/printRoom.ts';

export const GET: APIRoute = () =>
  new Response(`${JSON.stringify(printShelf())}\n`, {
    headers: { 'content-type': 'application/json; charset=utf-8' },
  });
