// Sets the lines of a label into its room: as large as they go, whole, and never cut off.
import { textWidth_em, type LabelFace } from './typeWidths.ts';

/** What a line of a label is; the most important come first on every label. */
export type LineRole = 'withheld' | 'name' | 'when' | 'amount' | 'care' | 'by' | 'farm';

/** A line before it has its size. */
export interface LabelLine {
  readonly role: LineRole;
  readonly text: string;
  readonly face: LabelFace;
  /** Size of its type over the label's own. */
  readonly scale: number;
  /** Left out, whole, where it would make the others small. */
  readonly optional?: boolean;
}

/** A line with its place: `y_mm` is its base line, from the upper edge of the room. */
export interface SetLine {
  readonly role: LineRole;
  readonly text: string;
  readonly face: LabelFace;
  readonly size_mm: number;
  readonly y_mm: number;
}

/** Height of a line over its type size: capitals with their accents above, tails below. */
export const LINE = 1.2;
// Where the base line lies in it: Andika's accented capitals reach 1.02 up and its tails 0.24 down.
const BASE = 0.95;
const LARGEST_MM = 9;
const STEP_MM = 0.1;
// Type of 3 mm has capitals of 2.2 mm, which people read at arm's length in poor light; two lines of it are better than one
// that is smaller. 3.6 mm leave room for the farm's name. Common practice, no source.
const READABLE_MM = 3;
const ROOMY_MM = 3.6;
// On a tall label the last day may be broken where all lines grow by this.
const WORTH_A_BREAK = 1.25;
const NONE: readonly LineRole[] = [];
const ON_TALL: readonly LineRole[] = ['by', 'farm'];
const EVERY: readonly LineRole[] = ['withheld', 'name', 'when', 'amount', 'care', 'by', 'farm'];
// The part of the room left over that a warning may take.
const LOUD_SHARE = 0.7;
// A long name gives way before everything else does, but not below this part of its size.
const LEAST_NAME = 0.6;

/** The lines of a label in a room of `width_mm` by `height_mm`, from the top, spread over its height. */
export function fitLabel(lines: readonly LabelLine[], width_mm: number, height_mm: number): SetLine[] {
  const needed = lines.filter(({ optional }) => !optional);
  const whole =
    sized(lines, width_mm, height_mm, ROOMY_MM, NONE) ??
    sized(needed, width_mm, height_mm, READABLE_MM, NONE);
  if (whole && lines.some(({ role }) => role === 'withheld')) return loud(whole, width_mm, height_mm);
  if (whole) return sized(lines, width_mm, height_mm, baseOf(whole) * WORTH_A_BREAK, ON_TALL) ?? whole;
  // Ever smaller, until it fits: the label of a name without end is small, but whole.
  for (let least = READABLE_MM; ; least *= 0.8) {
    const broken = sized(needed, width_mm, height_mm, least, EVERY);
    if (broken) return broken;
  }
}

/** The warning as large as the room that is left lets it be; nothing else grows beside it. */
function loud(lines: readonly SetLine[], width_mm: number, height_mm: number): SetLine[] {
  const used = lines.reduce((sum, line) => sum + line.size_mm * LINE, 0);
  const free_mm = (height_mm - used) * LOUD_SHARE;
  const grown = lines.map((line) => {
    const most_mm = Math.min(width_mm / textWidth_em(line.text, line.face), line.size_mm + free_mm / LINE);
    return line.role === 'withheld' ? { ...line, size_mm: Math.max(line.size_mm, most_mm) } : line;
  });
  const now = grown.reduce((sum, line) => sum + line.size_mm * LINE, 0);
  return spread(grown, (height_mm - now) / (grown.length + 1));
}

// The size of plain lines, which all others go by.
const baseOf = (lines: readonly SetLine[]) =>
  Math.min(...lines.filter(({ role }) => role === 'amount').map(({ size_mm }) => size_mm));

function sized(
  lines: readonly LabelLine[],
  width_mm: number,
  height_mm: number,
  least_mm: number,
  mayBreak: readonly LineRole[],
): SetLine[] | null {
  const step = Math.min(STEP_MM, least_mm / 10);
  for (let size = LARGEST_MM; size >= least_mm - step / 2; size -= step) {
    const set = setAt(lines, width_mm, size, mayBreak);
    if (set === null) continue;
    const used = set.reduce((sum, line) => sum + line.size_mm * LINE, 0);
    if (used <= height_mm) return spread(set, (height_mm - used) / (set.length + 1));
  }
  return null;
}

type Sized = Omit<SetLine, 'y_mm'>;

function setAt(
  lines: readonly LabelLine[],
  width_mm: number,
  base_mm: number,
  mayBreak: readonly LineRole[],
): Sized[] | null {
  const all: Sized[] = [];
  for (const { role, text, face, scale } of lines) {
    const wanted_mm = base_mm * scale;
    const whole_mm = width_mm / textWidth_em(text, face);
    const size_mm =
      role === 'name' || role === 'withheld'
        ? Math.max(Math.min(wanted_mm, whole_mm), wanted_mm * LEAST_NAME)
        : wanted_mm;
    const pieces = size_mm <= whole_mm ? [text] : brokenText(text, face, width_mm / size_mm);
    if (pieces.length > 1 && !mayBreak.includes(role)) return null;
    all.push(...pieces.map((piece) => ({ role, text: piece, face, size_mm })));
  }
  return all;
}

function spread(lines: readonly Sized[], free_mm: number): SetLine[] {
  // What is left over goes between the lines, but not so much that they no longer belong together.
  const gap = Math.min(free_mm, (lines[0]?.size_mm ?? 0) * 0.35);
  let top = (free_mm - gap) * ((lines.length + 1) / 2) + gap;
  return lines.map((line) => {
    const y_mm = top + line.size_mm * BASE;
    top += line.size_mm * LINE + gap;
    return { ...line, y_mm };
  });
}

/**
 * A text in lines of at most `most_em` type sizes: broken between words, and within a word that is longer than a line.
 * Nothing of it is lost but the white space at a break.
 *
 * @example brokenText('Ida of the hill', 'plain', 4) // => ['Ida of', 'the hill']
 */
export function brokenText(text: string, face: LabelFace, most_em: number): string[] {
  const lines: string[] = [];
  let line = '';
  const fits = (more: string) => textWidth_em(more, face) <= most_em;
  for (const word of text.split(/\s+/).filter(Boolean)) {
    const joined = line === '' ? word : `${line} ${word}`;
    if (fits(joined)) {
      line = joined;
      continue;
    }
    if (line !== '') lines.push(line);
    line = '';
    for (const sign of word) {
      if (line !== '' && !fits(line + sign)) {
        lines.push(line);
        line = '';
      }
      line += sign;
    }
  }
  return line === '' ? lines : [...lines, line];
}
