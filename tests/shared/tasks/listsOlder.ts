// Lists of numbers as the later tasks print them, and slow ways to what is asked of a list.
import { expect } from 'vitest';
import type { Message } from '../../../shared/sheet/message.ts';
import type { Task } from '../../../shared/tasks/task.ts';
import { figure, num, slotList } from './slots.ts';

/** A rounded number: within half of its last place. */
export function expectNear(given: number | string | undefined, want: number, places: number): void {
  expect(Math.abs(Number(given) - want)).toBeLessThanOrEqual(0.5 * 10 ** -places + 1e-9);
}

/** The numbered milkings of a table of lots: number and amount stand above each other. */
export function gridOf(task: Task): Map<number, number> {
  const { columns, rows } = figure(task, 'table');
  const found = new Map<number, number>();
  const heads = columns.slice(1).map((column) => num(column.slots['number'] as never));
  const lines = rows.map((row) => row.slice(1).flatMap((cell) => ('num' in cell ? [num(cell)] : [])));
  const pairs = [[heads, lines[0] ?? []] as const, ...lines.flatMap((line, index) => (index % 2 === 1 ? [[line, lines[index + 1] ?? []] as const] : []))];
  for (const [numbers, amounts] of pairs) numbers.forEach((number, index) => found.set(number, amounts[index] ?? Number.NaN));
  expect([...found.keys()]).toEqual(Array.from({ length: found.size }, (_, index) => index + 1));
  return found;
} // prettier-ignore

/** The lots of a list in a slot. */
export const lotsIn = (message: Message | undefined, name: string): number[] => slotList(message, name);

/** The middle of a list by taking ends away until one or two are left. */
export function middle(values: readonly number[]): number {
  const left = [...values].sort((a, b) => a - b);
  while (left.length > 2) {
    left.pop();
    left.shift();
  }
  return left.reduce((sum, one) => sum + one, 0) / left.length;
}

/** Quartiles as the middles of what lies below and above the middle place. */
export function quartiles(values: readonly number[]): { q1: number; q3: number } {
  const sorted = [...values].sort((a, b) => a - b);
  const half = (sorted.length - (sorted.length % 2)) / 2;
  return { q1: middle(sorted.slice(0, half)), q3: middle(sorted.slice(sorted.length - half)) };
}
