// The proof of any figure by its id.
import { trimmedText } from '../quantity/show.ts';
import { shownUnit, UNIT_ML } from '../quantity/units.ts';
import type { Figure } from '../herd/figures.ts';
import { daysInMilkSums, doeBestSums, doeMeanSums, doeWeekSums } from './doeProofs.ts';
import {
  bestSums,
  daySums,
  doesSums,
  herdMeanSums,
  missingSums,
  spanOf,
  weekSums,
  yearSums,
  type Span,
  type Sums,
} from './herdProofs.ts';
import { BOOK_COLUMNS } from '../board/shown.ts';
import type { FigureKind, FigureProof, ProofInput } from './types.ts';

const SUMS: Readonly<Record<FigureKind, (input: ProofInput, span: Span, doe: string) => Sums>> =
  Object.freeze({
    'herd.day.total': daySums,
    'herd.week.total': (input, span) => weekSums(input, span),
    'herd.week.kept': (input, span) => weekSums(input, span, ({ row }) => row.use === 'kept'),
    'herd.week.missing': missingSums,
    'herd.week.dailyMean': herdMeanSums,
    'herd.week.does': doesSums,
    'herd.year.total': yearSums,
    'herd.best.day': bestSums,
    'doe.week.total': doeWeekSums,
    'doe.week.best': doeBestSums,
    'doe.week.dailyMean': doeMeanSums,
    'doe.daysInMilk': daysInMilkSums,
  });

/** Kind and doe of a figure's id. Throws for an id that no rule is known for. */
export function kindOf(id: string): { kind: FigureKind; doe: string } {
  const match = /^doe\.(.+)\.(week\.(?:total|best|dailyMean)|daysInMilk)$/.exec(id);
  const kind = match ? `doe.${match[2]}` : id;
  if (!Object.hasOwn(SUMS, kind)) throw new Error(`No proof is known for the figure "${id}".`);
  return { kind: kind as FigureKind, doe: match?.[1] ?? '' };
}

/** The proof of a figure: its value as shown, the sums with the numbers put in, the rows, the gaps. */
export function proofOf(id: string, input: ProofInput): FigureProof {
  const { kind, doe } = kindOf(id);
  const figure = input.figures.figures[id];
  if (!figure) throw new Error(`There is no figure "${id}".`);
  const span = spanOf(figure.span);
  const sums = span && figure.value !== null ? SUMS[kind](input, span, doe) : null;
  return {
    id,
    kind,
    doe: input.book.does.find((one) => one.id === doe)?.name ?? '',
    shown: shownValue(figure, input),
    steps: sums?.steps ?? [],
    columns: kind === 'herd.year.total' ? ['date', 'count', 'amount'] : BOOK_COLUMNS,
    groups: sums?.groups ?? [],
    gaps: sums?.gaps ?? [],
  };
}

function shownValue({ value, unit }: Figure, { lang, units }: ProofInput): string {
  if (value === null) return '';
  if (unit !== 'L') return trimmedText(value, lang);
  return trimmedText((value * 1000) / UNIT_ML[shownUnit(units)].valueOf(), lang);
}
