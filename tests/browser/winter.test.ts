// The site on a December day: the does rest, and every page says so with the week it shows.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { dateText, spanText } from '../../shared/quantity/show.ts';
import { builtSite, type TestSite } from '../support/builtSite.ts';
import { pagePaths } from '../support/openPages.ts';

interface Figures {
  state: string;
  window: { from: string; to: string };
}

let site: TestSite;
let figures: Figures;
beforeAll(async () => {
  site = await builtSite('winter');
  figures = JSON.parse(readFileSync(join(site.dist, 'figures.json'), 'utf8')) as Figures;
});

/** The page's text as a reader meets it. */
function textOf(path: string): string {
  const html = readFileSync(join(site.dist, path, path.endsWith('.html') ? '' : 'index.html'), 'utf8');
  return html
    .replace(/<(script|style|head)\b[\s\S]*?<\/\1>/g, ' ')
    .replace(/<[^>]+>/g, ' ')
    .replace(/&#39;|&apos;/g, "'")
    .replace(/&quot;/g, '"')
    .replace(/&amp;/g, '&')
    .replace(/\s+/g, ' ');
}

const langOf = (path: string) => (path.startsWith('es/') ? 'es' : 'en');
// Pages that show no number of the herd need not say that it rests.
const SHOWS_MILK =
  /^(es\/)?($|barn\/$|barn\/(how-much|whose-milk|where-it-goes|does-it-hurt)\/|sheets\/.+|book-state\/)/;

describe('the site for 20 December', () => {
  it('has the figures of the last week with milk', () => {
    expect(figures.state).toBe('resting');
    expect(figures.window.to < '2026-12-07').toBe(true);
  });

  it('says on every page with the herd’s numbers that the does are resting', () => {
    const pages = pagePaths(site).filter((path) => SHOWS_MILK.test(path));
    expect(pages.length).toBeGreaterThanOrEqual(20);
    const word = { en: /\brest(ing|s)?\b/i, es: /descans/i };
    expect(pages.filter((path) => !word[langOf(path)].test(textOf(path)))).toEqual([]);
  });

  it('tells the week by its dates, or the day that ends it', () => {
    const { from, to } = figures.window;
    const pages = pagePaths(site).filter((path) => SHOWS_MILK.test(path));
    const untold = pages.filter((path) => {
      const text = textOf(path);
      return !text.includes(spanText(from, to, langOf(path))) && !text.includes(dateText(to, langOf(path)));
    });
    expect(untold).toEqual([]);
  });

  it('calls no week "this week" that lies months back', () => {
    const said = pagePaths(site).flatMap((path) => {
      const found = /[^.!?]*\b(this week:|esta semana:)[^.!?]*/i.exec(textOf(path));
      return found ? [`/${path} ${found[0].trim().slice(0, 80)}`] : [];
    });
    expect(said).toEqual([]);
  });
});
