// A plain page that lists the printed sheets, newest day first.
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';

/** The list of PDFs in the folders of `prints` as a whole page of HTML. */
export function pdfIndex(prints: string): string {
  const days = foldersIn(prints).map((day) => ({ day, files: pdfsIn(join(prints, day)) }));
  const full = days.filter(({ files }) => files.length > 0).reverse();
  const lists = full.map(
    ({ day, files }) =>
      `<h2>${escaped(day)}</h2>\n<ul>\n${files.map((file) => entry(day, file)).join('\n')}\n</ul>`,
  );
  const body = lists.length > 0 ? lists.join('\n') : '<p>npm run print</p>';
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>PDF</title>
<style>body { font: 1.25rem/1.6 Andika, sans-serif; background: #f5ecd9; color: #1e1912; margin: 2rem auto; max-width: 40rem; padding: 0 1rem }
a { color: #8f1f14; display: inline-block; min-height: 2rem }</style>
</head>
<body>
<h1>PDF</h1>
${lists.length > 0 ? '' : '<p>No sheets have been printed yet. To print them:</p>\n'}${body}
</body>
</html>
`;
}

const entry = (day: string, file: string) =>
  `<li><a href="${encodeURIComponent(day)}/${encodeURIComponent(file)}">${escaped(file)}</a></li>`;

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
