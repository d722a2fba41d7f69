// The day as blocks on a sheet of millimetres: a line a party, the clock from left to right.
import type { DayPlan, Slot } from '../types.ts';

/** A slot as a block. */
export interface ChartBlock {
  readonly slot: Slot;
  readonly x: number;
  readonly width: number;
  /** The number of its station; null for what is none, or where the block is too narrow to write on. */
  readonly number: number | null;
}

/** The whole chart, mm. */
export interface DayChart {
  readonly width: number;
  readonly height: number;
  /** Where the clock begins. */
  readonly left: number;
  readonly hours: readonly { readonly x: number; readonly at: number }[];
  readonly rows: readonly {
    readonly party: number;
    readonly y: number;
    readonly height: number;
    readonly blocks: readonly ChartBlock[];
  }[];
}

const WIDTH_mm = 180;
const TOP_mm = 6;
/** A number of two digits needs this much. */
const NUMBER_mm = 4;
const LABEL_mm = 22;
const LONG_min = 7 * 60;

/** The chart of a day. Lines are lower where there are many parties. */
export function chartOf(day: DayPlan): DayChart {
  const slots = day.parties.flat();
  const from = Math.min(...slots.map((slot) => slot.from));
  const to = Math.max(...slots.map((slot) => slot.to));
  const left = LABEL_mm;
  const scale = (WIDTH_mm - left - 4) / Math.max(1, to - from);
  const x = (at: number): number => left + (at - from) * scale;
  const [tall, gap] = day.parties.length > 6 ? [6, 1.2] : [8, 2];
  const block = (slot: Slot): ChartBlock => {
    const width = (slot.to - slot.from) * scale;
    const number = slot.kind === 'station' && width >= NUMBER_mm ? day.stations.indexOf(slot.station ?? '') + 1 : null; // prettier-ignore
    return { slot, x: x(slot.from), width, number };
  };
  return {
    width: WIDTH_mm,
    height: TOP_mm + day.parties.length * (tall + gap),
    left,
    hours: ticks(from, to).map((at) => ({ at, x: x(at) })),
    rows: day.parties.map((party, index) => ({
      party: index,
      y: TOP_mm + index * (tall + gap),
      height: tall,
      blocks: party.filter((slot) => slot.to > slot.from).map(block),
    })),
  };
}

/** The half hours between two minutes; whole hours of a day so long that their labels would touch. */
function ticks(from: number, to: number): number[] {
  const each_min = to - from > LONG_min ? 60 : 30;
  const first = Math.ceil(from / each_min);
  const count = Math.max(0, Math.floor(to / each_min) - first + 1);
  return Array.from({ length: count }, (_, index) => (first + index) * each_min);
}
