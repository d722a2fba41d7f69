// Talks with the farm's own machine, where it serves the page: whether it prints, how far it is, and its PDF.

/** The name of the header by which the farm's own machine says that it prints. */
const PRINTS = 'pailside-prints';

/** A PDF in this browser's keeping. */
export interface PrintedPdf {
  readonly address: string;
  readonly name: string;
  /** Its size in words. */
  readonly size: string;
}

/** Whether the machine that serves this page prints too. It says so in a header; any other host has none. */
export async function canPrint(): Promise<boolean> {
  try {
    const answer = await fetch(location.pathname, { method: 'HEAD', cache: 'no-store' });
    return answer.headers.get(PRINTS) === 'yes';
  } catch {
    return false;
  }
}

/** How far the printing is; null where nobody says. */
export async function stateOfPrinting(file: string): Promise<{ made: number; of: number } | null> {
  try {
    const answer = await fetch(file, { cache: 'no-store' });
    return answer.ok ? ((await answer.json()) as { made: number; of: number }) : null;
  } catch {
    return null;
  }
}

/** Why there is no PDF: another one is being printed, it took too long, or it failed. Keys under `print.pdf`. */
export type PdfLack = 'taken' | 'slow' | 'failed';

const WHY: Readonly<Record<number, PdfLack>> = { 503: 'taken', 504: 'slow' };

/** Asks for the PDF of an order. */
export async function askForPdf(
  address: string,
): Promise<{ ok: true; pdf: PrintedPdf } | { ok: false; why: PdfLack }> {
  try {
    const answer = await fetch(address, { cache: 'no-store' });
    if (!answer.ok) return { ok: false, why: WHY[answer.status] ?? 'failed' };
    const body = await answer.blob();
    const name = /filename\*=UTF-8''([^;]+)/.exec(answer.headers.get('content-disposition') ?? '')?.[1];
    const size = `${(body.size / 1_000_000).toFixed(1)} MB`;
    return {
      ok: true,
      pdf: { address: URL.createObjectURL(body), name: decodeURIComponent(name ?? 'pack.pdf'), size },
    };
  } catch {
    return { ok: false, why: 'failed' };
  }
}
