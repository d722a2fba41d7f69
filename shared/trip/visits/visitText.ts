// A new visit's file: its text, and the name that it is kept under.
import { clockText } from '../../lesson/clock.ts';
import { gradeSign } from '../../tasks/grades.ts';
import type { Visit } from '../visitTypes.ts';

/** The longest school or code, and the longest note, that a page takes; letters. */
export const LONGEST = Object.freeze({ school: 80, note: 400 });

const LONGEST_SLUG = 40;
// Control characters have no place in a line of a file.
const UNSEEN = /[\u0000-\u001f\u007f-\u009f\u2028\u2029\ufeff]+/g;

/** On one line, in single quotes, which YAML of either version reads as the text itself. */
const quoted = (text: string) => `'${text.replace(UNSEEN, ' ').trim().replaceAll("'", "''")}'`;

/** The text of a new visit's file, in YAML; what is empty is left out. */
export function visitText({ school, state, wish, note }: Omit<Visit, 'file'>): string {
  const { date, grade, children, adults, arrive, leave, buses, lunch, stations, needs, rain, word } = wish;
  const lines: [string, string | number][] = [
    ['school', quoted(school)],
    ['state', state],
    ['date', quoted(date)],
    ['grade', gradeSign(grade)],
    ['children', children],
    ['adults', adults],
    ['arrive', quoted(clockText(arrive))],
    ['leave', quoted(clockText(leave))],
    ['buses', buses],
    ['lunch', lunch === null ? 'no' : quoted(clockText(lunch))],
  ];
  if (stations.length > 0) lines.push(['stations', `[${stations.join(', ')}]`]);
  if (needs.length > 0) lines.push(['needs', `[${needs.join(', ')}]`]);
  if (rain) lines.push(['rain', 'yes']);
  if (word !== '') lines.push(['word', quoted(word)]);
  if (note.trim() !== '') lines.push(['note', quoted(note)]);
  return lines.map(([name, value]) => `${name}: ${value}\n`).join('');
}

/**
 * The name of a visit's file: its date, and the school in plain letters. From the second of a date and school on with a number.
 * @example visitFileName('2026-05-27', 'Escuela Ñandú', 1) // => '2026-05-27-escuela-nandu.yaml'
 */
export function visitFileName(date: string, school: string, number: number): string {
  const plain = school.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
  const slug = plain.replace(/[^a-z0-9]+/g, '-').slice(0, LONGEST_SLUG).replace(/^-+|-+$/g, ''); // prettier-ignore
  return `${date}-${slug || 'visit'}${number > 1 ? `-${number}` : ''}.yaml`;
}
