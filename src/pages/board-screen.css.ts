// The size of the barn's screen as the board's styles need it: the diagonal in millimetres, without a unit.
import type { APIRoute } from 'astro';
import { openSite } from '../site/site.ts';

export const GET: APIRoute = () =>
  new Response(`.kiosk { --diagonal_mm: ${openSite().farm.screen_mm}; }\n`, {
    headers: { 'content-type': 'text/css; charset=utf-8' },
  });
