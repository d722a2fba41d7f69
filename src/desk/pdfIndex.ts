// A plain page that lists the printed sheets, newest day first, by language and grade.
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describeFile, type FileWords } from './pdfNames.ts';

/** The list of PDFs in the folders of `prints` as a whole page of HTML, each language under its own name. */
export function pdfIndex(prints: string): string {
  const days = foldersIn(prints).map((day) => ({ day, files: pdfsIn(join(prints, day)) }));
  const full = days.filter(({ files }) => files.length > 0).reverse();
  const lists = full.map(({ day, files }) => dayList(day, files.map(describeFile)));
  const none =
    '<p>No sheets have been printed yet. To print them:</p>\n<p lang="es">Todavía no hay hojas impresas. Para imprimirlas:</p>\n<p><code>npm run print</code></p>';
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<link rel="icon" href="../icon.svg">
<title>Printed sheets · Hojas impresas</title>
<style>body { font: 1.15rem/1.5 Andika, sans-serif; background: #f5ecd9; color: #1e1912; margin: 2rem auto; max-width: 52rem; padding: 0 1rem }
h2 { border-top: 0.3rem solid; padding-top: 0.4rem; margin: 2rem 0 0.6rem }
h3 { margin: 0 }
.langs { display: grid; grid-template-columns: repeat(auto-fit, minmax(18rem, 1fr)); gap: 1rem 2rem }
ul { list-style: none; margin: 0; padding: 0 }
a { color: #8f1f14; display: inline-block; min-height: 2.75rem; padding: 0.5rem 0; box-sizing: border-box; font-weight: 700 }
small { font-size: 0.95rem }</style>
</head>
<body>
<h1>Printed sheets · <span lang="es">Hojas impresas</span></h1>
${lists.length > 0 ? lists.join('\n') : none}
</body>
</html>
`;
}

function dayList(day: string, files: readonly FileWords[]): string {
  // Files that name no language come last.
  const langs = [...new Set(files.map(({ lang }) => lang))].sort((a, b) =>
    (a ?? '~').localeCompare(b ?? '~'),
  );
  const parts = langs.map((lang) => {
    const own = files.filter((one) => one.lang === lang).sort((a, b) => a.place - b.place);
    const entries = own.map(
      ({ file, title, more }) =>
        `<li><a href="${encodeURIComponent(day)}/${encodeURIComponent(file)}">${escaped(title)}</a>${more === '' ? '' : ` <small>${escaped(more)}</small>`}</li>`,
    );
    const mark = lang === null ? '' : ` lang="${escaped(lang)}"`;
    return `<section${mark}>\n<h3>${escaped(languageName(lang))}</h3>\n<ul>\n${entries.join('\n')}\n</ul>\n</section>`;
  });
  return `<h2>${escaped(day)}</h2>\n<div class="langs">\n${parts.join('\n')}\n</div>`;
}

/** The name of a language in itself: `English`, `Español`; a dash for files that name none. */
function languageName(lang: string | null): string {
  if (lang === null) return '–';
  const name = new Intl.DisplayNames([lang], { type: 'language' }).of(lang) ?? lang;
  return name.charAt(0).toLocaleUpperCase(lang) + name.slice(1);
}

function foldersIn(folder: string): string[] {
  if (!existsSync(folder)) return [];
  const entries = readdirSync(folder, { withFileTypes: true });
  return entries.filter((one) => one.isDirectory() && !one.name.startsWith('.')).map((one) => one.name).sort(); // prettier-ignore
}

function pdfsIn(folder: string): string[] {
  return readdirSync(folder).filter((name) => name.endsWith('.pdf')).sort(); // prettier-ignore
}

function escaped(text: string): string {
  return text.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);
}
