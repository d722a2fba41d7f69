// The bytes of an imported file as sheets of cells or as events, or why they are neither.
import { Worker } from 'node:worker_threads';
import type { ImportFault, Sheet, SheetRow, Told } from '../../../shared/book/importTypes.ts';
import { plainBreaks, walkRecords, type Separator } from '../../farm/csv.ts';
import { decodeText } from '../../farm/encoding.ts';
import { readIcar, type IcarReading } from '../../farm/icar/checkIcar.ts';
import type { XlsxAnswer } from './xlsxWorker.ts';

/** A file that could be read, as far as that needs no farm. */
export type ImportFile =
  | {
      readonly kind: 'sheet';
      readonly sheets: readonly Sheet[];
      readonly faults: readonly ImportFault[];
      readonly remarks: readonly Told[];
    }
  | { readonly kind: 'icar'; readonly reading: IcarReading; readonly remarks: readonly Told[] }
  | { readonly kind: 'unreadable'; readonly told: Told };

/** Rows of one sheet, and events of one file. */
export const MOST_ROWS = 20_000;
const LONGEST_ms = 30_000;
const WORKER_MB = 400;

/** Reads a file by its first bytes and its text, whatever its name says. */
export async function readImportFile(bytes: Uint8Array): Promise<ImportFile> {
  if (bytes.length === 0) return unreadable('file.empty');
  const isZip = bytes[0] === 0x50 && bytes[1] === 0x4b;
  if (isZip) return readXlsx(bytes);
  const isOld = bytes[0] === 0xd0 && bytes[1] === 0xcf && bytes[2] === 0x11 && bytes[3] === 0xe0;
  if (isOld) return unreadable('file.oldSpreadsheet');
  const { text, fault } = decodeText(bytes);
  if (text === null) return unreadable('file.notText');
  const remarks = fault ? [{ key: 'remark.encoding', slots: {} }] : [];
  if (/^\s*[[{]/.test(text)) return icarFile(text, remarks);
  return textSheet(text, remarks);
}

const unreadable = (key: string, slots: Told['slots'] = {}): ImportFile => ({
  kind: 'unreadable',
  told: { key, slots },
});
const tooMany = () => unreadable('file.tooManyRows', { most: MOST_ROWS });

function icarFile(text: string, remarks: readonly Told[]): ImportFile {
  const reading = readIcar(text);
  if (reading.visits.length + reading.tests.length + reading.left.length > MOST_ROWS) return tooMany();
  return { kind: 'icar', reading, remarks };
}

// Of the three separators the one that parts the first lines most.
function separatorOf(text: string): Separator {
  const first = text.split('\n', 12);
  const parts = (separator: Separator) =>
    first.reduce((sum, line) => sum + line.split(separator).length - 1, 0);
  return ([',', ';', '\t'] as const).reduce((best, one) => (parts(one) > parts(best) ? one : best));
}

function textSheet(raw: string, remarks: readonly Told[]): ImportFile {
  const text = plainBreaks(raw);
  const separator = separatorOf(text);
  const rows: SheetRow[] = [];
  const faults: ImportFault[] = [];
  walkRecords(
    text,
    separator,
    { offset: 0, line: 1 },
    (cells, _start, line) => rows.push({ line, cells }),
    ({ place, cell }) =>
      faults.push({
        line: place.line,
        column: null,
        found: cell.slice(0, 60),
        told: { key: 'fault.quote', slots: {} },
      }),
  );
  if (rows.length > MOST_ROWS + 20) return tooMany();
  if (rows.length === 0) return unreadable('file.empty');
  return { kind: 'sheet', sheets: [{ name: '', rows, decimalComma: separator === ';' }], faults, remarks };
}

async function readXlsx(bytes: Uint8Array): Promise<ImportFile> {
  const said = await inWorker(bytes);
  if (!said.ok) return unreadable(said.why === 'too big' ? 'file.tooBig' : 'file.damaged');
  if (said.sheets.some(({ rows }) => rows.length > MOST_ROWS + 20)) return tooMany();
  const sheets = said.sheets.map(({ name, rows }): Sheet => ({
    name,
    rows: rows.map((cells, index) => ({ line: index + 1, cells })),
    decimalComma: false,
  }));
  if (!sheets.some(({ rows }) => rows.length > 0)) return unreadable('file.empty');
  return { kind: 'sheet', sheets, faults: [], remarks: [] };
}

function inWorker(bytes: Uint8Array): Promise<XlsxAnswer> {
  return new Promise((done) => {
    const worker = new Worker(new URL('./xlsxWorker.ts', import.meta.url), {
      workerData: bytes,
      resourceLimits: { maxOldGenerationSizeMb: WORKER_MB },
      // What the library says of odd files is of no use to anybody at the desk.
      stderr: true,
      stdout: true,
    });
    const end = (said: XlsxAnswer) => {
      clearTimeout(limit);
      void worker.terminate();
      done(said);
    };
    const limit = setTimeout(() => end({ ok: false, why: 'too big' }), LONGEST_ms);
    worker.once('message', (said: XlsxAnswer) => end(said));
    worker.once('error', (error: NodeJS.ErrnoException) =>
      end({ ok: false, why: error.code === 'ERR_WORKER_OUT_OF_MEMORY' ? 'too big' : 'damaged' }),
    );
    worker.once('exit', () => end({ ok: false, why: 'damaged' }));
  });
}
