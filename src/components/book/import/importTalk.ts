// What the import's page asks the desk: read this file, show it with these choices, write it.
import type {
  ImportAnswer,
  ImportChoices,
  ImportPreview,
  ImportWritten,
} from '../../../../shared/book/importTypes.ts';

/** The farm's own limit; the desk turns away what is longer. */
export const MOST_BYTES = 5_000_000;
const XLSX_TYPE = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

/** No answer worth the name; `words`: this browser has not said them. */
export type NoAnswer = { readonly ok: false; readonly why: 'no answer' | 'words' | 'too long' };

/** Sends a file as it is; the desk finds out by itself what it is. */
export async function sendFile(
  base: string,
  file: Blob & { readonly name?: string },
): Promise<ImportAnswer | NoAnswer> {
  if (file.size > MOST_BYTES) return { ok: false, why: 'too long' };
  const name = file.name ?? '';
  const type = /\.(json|jsonl|ndjson)$/i.test(name)
    ? 'application/json'
    : /\.xlsx$/i.test(name)
      ? XLSX_TYPE
      : 'text/csv';
  return post(`${base}desk/import/file?name=${encodeURIComponent(name)}`, type, file);
}

/** The preview with other choices. */
export function sendChoices(
  base: string,
  hash: string,
  choices: ImportChoices,
): Promise<ImportAnswer | NoAnswer> {
  return post(`${base}desk/import/plan`, 'application/json', JSON.stringify({ hash, choices }));
}

/** Writes what the preview shows. */
export function sendWrite(
  base: string,
  { hash, choices, fingerprint }: ImportPreview,
): Promise<ImportWritten | NoAnswer> {
  return post(`${base}desk/import/write`, 'application/json', JSON.stringify({ hash, choices, fingerprint }));
}

async function post<T>(address: string, type: string, body: BodyInit): Promise<T | NoAnswer> {
  try {
    const answer = await fetch(address, { method: 'POST', headers: { 'Content-Type': type }, body });
    if (answer.status === 413) return { ok: false, why: 'too long' };
    if (answer.status === 403) return { ok: false, why: 'words' };
    return answer.ok ? ((await answer.json()) as T) : { ok: false, why: 'no answer' };
  } catch {
    return { ok: false, why: 'no answer' };
  }
}
