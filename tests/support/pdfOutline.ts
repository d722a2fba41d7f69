// The outline of a PDF as a reader shows it, read from the file itself.
import { readFileSync } from 'node:fs';

/** An entry of an outline with those below it. */
export interface OutlineEntry {
  readonly title: string;
  readonly below: readonly OutlineEntry[];
}

/** The outline of a PDF whose objects are not packed, as Chromium writes it (PDF 32000-1:2008, 12.3.3). */
export function pdfOutline(file: string): OutlineEntry[] {
  const text = readFileSync(file, 'latin1');
  const objects = new Map(
    [...text.matchAll(/(?:^|\n)(\d+) 0 obj\s*<<(.*?)>>\s*(?:endobj|stream)/gs)].map(
      ([, number, body = '']) => [Number(number), body] as const,
    ),
  );
  const refOf = (body: string | undefined, name: string): number | null => {
    const found = new RegExp(`/${name} (\\d+) 0 R`).exec(body ?? '');
    return found ? Number(found[1]) : null;
  };
  const listFrom = (first: number | null): OutlineEntry[] => {
    const entries: OutlineEntry[] = [];
    for (let at = first; at !== null; at = refOf(objects.get(at), 'Next')) {
      const body = objects.get(at) ?? '';
      entries.push({ title: titleOf(body), below: listFrom(refOf(body, 'First')) });
    }
    return entries;
  };
  const root = [...objects.values()].find((body) => /\/Type\s*\/Catalog/.test(body));
  const outlines = refOf(root, 'Outlines');
  return outlines === null ? [] : listFrom(refOf(objects.get(outlines), 'First'));
}

/** A text string: UTF-16 with its mark in hexadecimal digits, or plain letters in brackets. */
function titleOf(body: string): string {
  const coded = /\/Title\s*<FEFF([0-9A-Fa-f]*)>/.exec(body)?.[1];
  if (coded !== undefined) return Buffer.from(coded, 'hex').swap16().toString('utf16le');
  const plain = /\/Title\s*\(((?:\\.|[^)\\])*)\)/s.exec(body)?.[1] ?? '';
  return plain.replace(/\\(.)/g, '$1');
}
