// Unpacks a spreadsheet apart from the desk: a file made to burst must not stop the milkers' entries.
import { parentPort, workerData } from 'node:worker_threads';
import { unzipSync } from 'fflate';
import readWorkbook from 'read-excel-file/node';

/** What the worker says: sheets of cells as text, or why there are none. */
export type XlsxAnswer =
  | {
      readonly ok: true;
      readonly sheets: readonly { readonly name: string; readonly rows: readonly (readonly string[])[] }[];
    }
  | { readonly ok: false; readonly why: 'damaged' | 'too big' };

const MOST_UNPACKED = 80_000_000;
const DAY_MS = 86_400_000;

/** A cell as somebody would have typed it: dates as ISO, numbers without what binary fractions add. */
function cellText(value: unknown): string {
  if (value === null || value === undefined) return '';
  if (value instanceof Date) return dateText(value);
  if (typeof value === 'number') return Number.isInteger(value) ? String(value) : shortNumber(value);
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE';
  return typeof value === 'string' ? value : '';
}

const shortNumber = (value: number) => {
  const short = String(Number(value.toPrecision(12)));
  return short.includes('e') ? value.toFixed(6) : short;
};

// A time of day alone is a part of the spreadsheet's day zero; a date has its time only where somebody typed one.
function dateText(date: Date): string {
  const ms = date.getTime();
  if (Number.isNaN(ms)) return '';
  const iso = new Date(Math.round(ms / 1000) * 1000).toISOString();
  if (date.getUTCFullYear() < 1901) return iso.slice(11, 16);
  return ms % DAY_MS === 0 ? iso.slice(0, 10) : iso.slice(0, 19);
}

async function answer(bytes: Uint8Array): Promise<XlsxAnswer> {
  let unpacked = 0;
  unzipSync(bytes, { filter: ({ originalSize }) => ((unpacked += originalSize), false) });
  if (unpacked > MOST_UNPACKED) return { ok: false, why: 'too big' };
  const sheets = await readWorkbook(Buffer.from(bytes));
  return {
    ok: true,
    sheets: sheets.map(({ sheet, data }) => ({ name: sheet, rows: data.map((row) => row.map(cellText)) })),
  };
}

const said = await answer(workerData as Uint8Array).catch((): XlsxAnswer => ({ ok: false, why: 'damaged' }));
parentPort?.postMessage(said);
