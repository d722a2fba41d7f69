// Turns a message into pieces to print: texts, and fractions to be stacked.
import { valueOf, writtenParts, type Shown, type SheetUnit } from '../quantity/grade.ts';
import { dayNumber, civilFromDay, weekday } from '../calendar/day.ts';
import { say, type Slots, type Words } from '../words/words.ts';
import type { DateStyle, Message, Slot } from './message.ts';

/** A piece of a line: text, or a fraction whose top stands over its bottom. */
export type Piece = string | { readonly top: string; readonly bottom: string };

const MARK = '\u0001';
const MARKED = new RegExp(`${MARK}(\\w+)${MARK}`);

/** The pieces of a message in a language. Throws where a word or a slot is missing: that is a fault of ours. */
export function tell(words: Words, message: Message): Piece[] {
  const slots: Record<string, string | number> = {};
  for (const [name, slot] of Object.entries(message.slots)) {
    // A whole number goes in as one, so that it can choose the plural.
    const plain = name === 'n' && slot.is === 'number' && slot.den === 1;
    slots[name] = plain ? slot.num : `${MARK}${name}${MARK}`;
  }
  const said = say(words, message.key, slots satisfies Slots);
  const pieces = said.split(MARKED).flatMap((part, index): readonly Piece[] => {
    if (index % 2 === 0) return part === '' ? [] : [part];
    return tellSlot(words, message.slots[part] as Slot);
  });
  return joinTexts(pieces);
}

/** The same as one plain text, with fractions written 3/4. */
export function tellText(words: Words, message: Message): string {
  return plainText(tell(words, message));
}

/** Pieces as plain text; a fraction keeps its distance from a whole number before it. */
export function plainText(pieces: readonly Piece[]): string {
  return pieces
    .map((piece, index) => {
      if (typeof piece === 'string') return piece;
      const before = pieces[index - 1];
      const gap = typeof before === 'string' && /\d$/.test(before) ? ' ' : '';
      return `${gap}${piece.top}/${piece.bottom}`;
    })
    .join('');
}

/** The pieces of what fills a slot. */
export function tellSlot(words: Words, slot: Slot): Piece[] {
  switch (slot.is) {
    case 'number':
      return numberPieces(slot);
    case 'quantity':
      return quantityPieces(words, slot, slot.unit, slot.step ?? false);
    case 'text':
      return [slot.text];
    case 'message':
      return tell(words, slot.message);
    case 'date':
      return [dateText(words, slot.iso, slot.style)];
    case 'time':
      return [clockText(words, slot.time)];
    case 'list':
      return slot.bare
        ? between(
            slot.of.map((one) => tellSlot(words, one)),
            ', ',
          )
        : andList(words, slot.of);
    case 'math':
      return mathPieces(slot.line);
  }
}

/** A number alone. */
export function numberPieces(shown: Shown): Piece[] {
  const { whole, num, den } = writtenParts(shown);
  if (num === undefined || den === undefined) return [whole];
  return whole === '' ? [{ top: num, bottom: den }] : [whole, { top: num, bottom: den }];
}

/** A number with its unit in the right form: "1 cup", "2 cups", "3/4 cup", "3/4 de taza". */
export function quantityPieces(words: Words, shown: Shown, unit: SheetUnit, step = false): Piece[] {
  const value = Math.abs(valueOf(shown));
  const key = `sheet.unit.${unit}.${formOf(words.lang, value, shown, step)}`;
  const [before = '', after = ''] = say(words, key, { x: `${MARK}x${MARK}` }).split(`${MARK}x${MARK}`);
  return joinTexts([before, ...numberPieces(shown), after].filter((piece) => piece !== ''));
}

/** What stands after a number that is set apart from it: "cup" after 1 and 1/4, "cups" after 2. */
export function unitAfter(words: Words, shown: Shown, unit: SheetUnit): string {
  const form = formOf(words.lang, Math.abs(valueOf(shown)), shown, false);
  return say(words, `sheet.unit.${unit}.${form}`, { x: '' }).trim();
}

/** What stands after a number that is still to be written. */
export function unitAfterBlank(words: Words, unit: SheetUnit): string {
  return say(words, `sheet.unit.${unit}.other`, { x: '' }).trim();
}

function formOf(lang: string, value: number, { places, den }: Shown, step: boolean) {
  if (value < 1 && places === undefined && den > 1) return value === 0.5 ? 'half' : 'part';
  if (step) return value < 1 ? 'part' : 'one';
  // "1.0 cups" but "1 cup": the plural rules of a language look at the decimals that are written.
  const rules = new Intl.PluralRules(lang, { minimumFractionDigits: places ?? 0 });
  return rules.select(value) === 'one' ? 'one' : 'other';
}

function mathPieces(line: readonly (string | Shown)[]): Piece[] {
  const pieces = line.map((one, index): readonly Piece[] => {
    if (typeof one === 'string') return [one];
    // A minus inside a line stands in brackets, so that it is no second sign.
    const inside = one.num < 0 && index > 0 && line[index - 1] !== '=';
    return inside ? ['(', ...numberPieces(one), ')'] : numberPieces(one);
  });
  return joinTexts(
    pieces.flatMap((one, index) => {
      const before = line[index - 1];
      // An equation stays on one line.
      const gap = line.includes('x') ? '\u00a0' : ' ';
      const tight = index === 0 || before === '(' || line[index] === ')' || line[index] === 'x';
      return tight ? one : [gap, ...one];
    }),
  );
}

function andList(words: Words, of: readonly Slot[]): Piece[] {
  const told = of.map((one) => tellSlot(words, one));
  if (told.length < 2) return told.flat();
  const last = told.at(-1) ?? [];
  // Spanish "y" becomes "e" before a word that begins with its sound.
  const before = /^h?[ií](?![aeou])/i.test(plainText(last)) ? 'sheet.and-before-i' : 'sheet.and';
  return joinTexts([...between(told.slice(0, -1), ', '), say(words, before), ...last]);
}

function between(told: readonly (readonly Piece[])[], sign: string): Piece[] {
  return joinTexts(told.flatMap((one, index) => (index === 0 ? one : [sign, ...one])));
}

function dateText(words: Words, iso: string, style: DateStyle): string {
  const day = dayNumber(iso);
  if (day === null) throw new Error(`"${iso}" is no date.`);
  if (style === 'day') return say(words, `sheet.weekday.${weekday(day)}`);
  if (style === 'short') return say(words, `sheet.weekday-short.${weekday(day)}`);
  const { year, month, dayOfMonth } = civilFromDay(day);
  const slots = { month: say(words, `sheet.month.${month}`), day: dayOfMonth, year };
  return say(words, style === 'date' ? 'sheet.date' : 'sheet.date-year', slots);
}

function clockText(words: Words, time: string): string {
  const [hours = 0, minutes = 0] = time.split(':').map(Number);
  const face = `${hours % 12 === 0 ? 12 : hours % 12}:${String(minutes).padStart(2, '0')}`;
  return say(words, hours < 12 ? 'sheet.clock.am' : 'sheet.clock.pm', { time: face });
}

function joinTexts(pieces: readonly Piece[]): Piece[] {
  const joined: Piece[] = [];
  for (const piece of pieces) {
    const last = joined.at(-1);
    if (typeof piece === 'string' && typeof last === 'string') joined[joined.length - 1] = last + piece;
    else joined.push(piece);
  }
  return joined;
}
