// Everything that a child reads or writes on a task: its numbers with their units, in one list.
import type { Shown, SheetUnit } from '../../../shared/quantity/grade.ts';
import type { Message, Slot } from '../../../shared/sheet/message.ts';
import type { Picture } from '../../../shared/sheet/picture.ts';
import type { Task } from '../../../shared/tasks/task.ts';

/** A number as it is met, with the unit after it where there is one, and where it stands. */
export interface Met {
  readonly shown: Shown;
  readonly unit: SheetUnit | null;
  readonly where: 'told' | 'asked' | 'drawn' | 'answer';
}

/** Every number that a message prints, slot in slot. */
export function numbersIn(message: Message): { shown: Shown; unit: SheetUnit | null }[] {
  return Object.values(message.slots).flatMap(ofSlot);
}

function ofSlot(slot: Slot): { shown: Shown; unit: SheetUnit | null }[] {
  if (slot.is === 'number') return [{ shown: slot, unit: null }];
  if (slot.is === 'quantity') return [{ shown: slot, unit: slot.unit }];
  if (slot.is === 'message') return numbersIn(slot.message);
  if (slot.is === 'list') return slot.of.flatMap(ofSlot);
  if (slot.is !== 'math') return [];
  return slot.line.flatMap((one) => (typeof one === 'string' ? [] : [{ shown: one, unit: null }]));
}

const isShown = (value: unknown): value is Shown =>
  typeof value === 'object' && value !== null && 'num' in value && 'den' in value;

/** Every number in a figure, however deep it lies. */
function drawn(picture: Picture | null): Shown[] {
  const found: Shown[] = [];
  const walk = (value: unknown): void => {
    if (isShown(value)) found.push(value);
    else if (Array.isArray(value)) value.forEach(walk);
    else if (typeof value === 'object' && value !== null) Object.values(value).forEach(walk);
  };
  walk(picture);
  return found;
}

/** The unit that stands in a figure, where it has one. */
const unitOf = (picture: Picture | null): SheetUnit | null =>
  picture && 'unit' in picture ? picture.unit : null;

/** Every number of a task that a child meets, the answer's last. */
export function metOn(task: Task): Met[] {
  const told = task.lead.flatMap(numbersIn).map((one): Met => ({ ...one, where: 'told' }));
  const asked = task.asks
    .flatMap(({ prompt }) => numbersIn(prompt))
    .map((one): Met => ({ ...one, where: 'asked' }));
  const inPicture = drawn(task.picture).map((shown): Met => ({
    shown,
    unit: unitOf(task.picture),
    where: 'drawn',
  }));
  const written = task.asks.flatMap(({ values, work }) => {
    const after = 'after' in work ? work.after : [];
    return values.flatMap((value, index): Met[] =>
      typeof value === 'string' ? [] : [{ shown: value, unit: after[index] ?? null, where: 'answer' }],
    );
  });
  return [...told, ...asked, ...inPicture, ...written];
}
