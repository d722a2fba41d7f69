// How long one build's computing takes for a herd of sixty over three years: figures, every proof, outlook.
import { figuresOf } from '../../shared/herd/figures.ts';
import { openLedger } from '../../shared/herd/ledger.ts';
import { openOutlook } from '../../shared/outlook/outlook.ts';
import { openProofs } from '../../shared/proof/openProofs.ts';
import { proofOf } from '../../shared/proof/proofOf.ts';
import { largeBook } from './largeBook.ts';
import { shortest_ms, timeText, type Line, type Part } from './line.ts';

// Sixty does, twice a day for 289 days of each of three years.
const ROWS = 60 * 2 * 289 * 3;
const AHEAD_DAYS = [1, 7, 14, 28];
const RUNS = 3;

/** Figures, proofs and outlook; the figures alone stand beside the whole. */
export const herdPart: Part = async (say) => {
  say('A herd of sixty over three years …');
  const { book, asOf } = largeBook(ROWS);
  const figuresAlone = () => figuresOf(book, openLedger(book, asOf));
  const everything = () => {
    const ledger = openLedger(book, asOf);
    const figures = figuresOf(book, ledger);
    const input = openProofs({ lang: 'en', units: 'us', book, ledger, figures });
    const proofs = Object.keys(figures.figures).map((id) => proofOf(id, input));
    const outlook = openOutlook(book, ledger);
    return [proofs, AHEAD_DAYS.map((ahead) => outlook.on(asOf + ahead))];
  };
  const [ours_ms, theirs_ms] = [await shortest_ms(RUNS, everything), await shortest_ms(RUNS, figuresAlone)];
  const line: Line = {
    what: `figures, proofs and outlook of 60 does, ${ROWS.toLocaleString('en')} rows`,
    ours: timeText(ours_ms),
    beside: 'the figures alone',
    theirs: timeText(theirs_ms),
    ratio: ours_ms / theirs_ms,
  };
  return [line];
};
