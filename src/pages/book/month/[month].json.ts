// Each month of the book as it was when the site was built, for pages that have no desk to ask.
import type { APIRoute } from 'astro';
import { builtMonth, builtMonths } from '../../../site/month.ts';

export const getStaticPaths = () => builtMonths().map((month) => ({ params: { month } }));

export const GET: APIRoute = ({ params }) =>
  new Response(JSON.stringify(builtMonth(params['month'] ?? '')), {
    headers: { 'Content-Type': 'application/json' },
  });
