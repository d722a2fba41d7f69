// Words that people write over columns and into cells, in English and Spanish, and what they mean.
import type { MilkingTime, Use } from '../herd/types.ts';
import { unitNamed, type AmountUnit } from '../quantity/units.ts';
import type { PlainRole } from './importTypes.ts';

const HEADINGS: Readonly<Record<Exclude<PlainRole, 'leave'>, readonly string[]>> = {
  date: ['date', 'day', 'milking date', 'fecha', 'dia'],
  milking: ['milking', 'time', 'session', 'am/pm', 'ampm', 'shift', 'ordeno', 'turno', 'hora'],
  doe: ['doe', 'goat', 'doe name', 'name', 'animal', 'id', 'cabra', 'nombre'],
  amount: ['amount', 'milk', 'yield', 'weight', 'volume', 'cantidad', 'leche', 'peso', 'volumen'],
  am: ['am', 'morning', 'am milk', 'am amount', 'am yield', 'manana', 'matutino', 'ordeno am', 'leche am'],
  pm: ['pm', 'evening', 'afternoon', 'night', 'pm milk', 'pm amount', 'pm yield', 'tarde', 'noche', 'vespertino', 'ordeno pm', 'leche pm'],
  unit: ['unit', 'units', 'unidad', 'unidades'],
  use: ['use', 'uso', 'destino'],
  note: ['note', 'notes', 'remark', 'remarks', 'comment', 'comments', 'nota', 'notas', 'observaciones', 'comentarios'],
  entered: ['entered', 'written', 'registrado', 'anotado'],
}; // prettier-ignore

const ROLE_OF = new Map(
  Object.entries(HEADINGS).flatMap(([role, texts]) =>
    texts.map((text) => [text, role as PlainRole] as const),
  ),
);

const MILKINGS = new Map<string, MilkingTime>([
  ...['am', 'a', 'morning', 'manana', 'matutino'].map((text) => [text, 'am'] as const),
  ...['pm', 'p', 'evening', 'afternoon', 'night', 'tarde', 'noche', 'vespertino'].map(
    (text) => [text, 'pm'] as const,
  ),
]);

const USES = new Map<string, Use>([
  ...['kept', 'keep', 'guardada', 'guardado', 'consumo'].map((text) => [text, 'kept'] as const),
  ...['withheld', 'retirada', 'retirado', 'retenida'].map((text) => [text, 'withheld'] as const),
  ...['fed', 'fed to kids', 'kids', 'cabritos', 'a los cabritos'].map((text) => [text, 'fed'] as const),
  ...['lost', 'spilled', 'perdida', 'perdido', 'derramada'].map((text) => [text, 'lost'] as const),
]);

const TOTALS = new Set([
  'total',
  'totals',
  'sum',
  'grand total',
  'suma',
  'totales',
  'mean',
  'average',
  'promedio',
]);

// No heading is longer; what is takes long to look through, and a file may be full of it.
const LONGEST_HEADING = 120;
// Nothing that is compared with is as long: what is stands for itself.
const LONGEST_WORDS = 200;

/** A text for comparing: small letters, no accents, no full stops, single spaces. */
export function plainWords(text: string): string {
  if (text.length > LONGEST_WORDS) return text;
  return text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replaceAll('.', '')
    .replace(/[_\s]+/g, ' ')
    .trim();
}

/** A heading apart from the unit that it may name: `AM (lb)` is `AM` in pounds. */
export function headingAndUnit(text: string): { text: string; unit: AmountUnit | null } {
  if (text.length > LONGEST_HEADING) return { text: text.trim(), unit: null };
  const brackets = /^(.*?)\s*[([]\s*([^)\]]*?)\s*[)\]]\s*$/.exec(text);
  const inside = brackets ? unitNamed(brackets[2] ?? '') : null;
  if (brackets && inside) return { text: (brackets[1] ?? '').trim(), unit: inside };
  const words = /^(.+?)[,:\s]+(fl\.? oz\.?|\p{L}+\.?)$/u.exec(text.trim());
  const last = words ? unitNamed(words[2] ?? '') : null;
  // `AM c` is no unit of anything: a single letter must stand in brackets.
  if (words && last && (words[2] ?? '').length > 1) return { text: (words[1] ?? '').trim(), unit: last };
  return { text: text.trim(), unit: null };
}

/** The role that a heading names, or null. */
export function roleNamed(heading: string): PlainRole | null {
  return ROLE_OF.get(plainWords(heading)) ?? null;
}

/** The milking that a text names: `a.m.`, `Morning`, `tarde`; null where it names none. */
export function milkingNamed(text: string): MilkingTime | null {
  return MILKINGS.get(plainWords(text).replaceAll(' ', '')) ?? null;
}

/** The milking at the start or the end of a heading, and the rest of it: `Juniper a.m.` */
export function milkingBeside(heading: string): { rest: string; milking: MilkingTime } | null {
  if (heading.length > LONGEST_HEADING) return null;
  const plain = heading.trim();
  const last = /^(.*?)[\s,:/(–-]+([^\s,:/()–-]+)\)?$/.exec(plain);
  const first = /^\(?([^\s,:/()–-]+)[\s,:/)–-]+(.*)$/.exec(plain);
  for (const [rest, word] of [
    [last?.[1], last?.[2]],
    [first?.[2], first?.[1]],
  ]) {
    const milking = milkingNamed(word ?? '');
    if (milking && rest) return { rest, milking };
  }
  return null;
}

/** The use that a text names; null where it names none. */
export function useNamed(text: string): Use | null {
  return USES.get(plainWords(text)) ?? null;
}

/** Whether a cell says that its row holds sums. */
export function isTotal(text: string): boolean {
  return TOTALS.has(plainWords(text).replace(/:$/, ''));
}

/** Minutes after midnight of a clock time such as `6:30`, `06:30:00` or `5:30 pm`; null where the text is none. */
export function clockMinutes(text: string): number | null {
  const match = /^(\d{1,2}):(\d{2})(?::\d{2})? ?(am|pm)?$/.exec(plainWords(text));
  if (!match) return null;
  const [hour, minute] = [Number(match[1]), Number(match[2])];
  if (minute > 59 || hour > 23 || (match[3] && (hour < 1 || hour > 12))) return null;
  const half = match[3] === undefined ? 0 : match[3] === 'pm' ? 12 : 0;
  return ((match[3] ? hour % 12 : hour) + half) * 60 + minute;
}
