// The head of a content file: YAML between two lines of three dashes, with the line of every field.
import * as z from 'zod';
import { LineCounter, parseDocument, visit, type Document } from 'yaml';
import { nearestName } from '../farm/nearest.ts';
import type { ContentFault } from './contentFault.ts';

/** A head that has the shape, or what is wrong with it. `bodyLine` is the line on which the text below it begins. */
export type HeadReading<T> =
  | {
      readonly ok: true;
      readonly head: T;
      readonly body: string;
      readonly bodyLine: number;
      /** The line of a field, for faults that are found later. */
      readonly lineOf: (path: readonly PropertyKey[]) => number;
    }
  | {
      readonly ok: false;
      readonly faults: readonly ContentFault[];
      /** The text below a head that could be told from it, so that its faults are told at once. */
      readonly body: string | null;
      readonly bodyLine: number;
    };

const FENCE = /^---[ \t]*$/;

/** Reads the head of a file against a shape; `file` is the name that faults are told by. */
export function readHead<T>(file: string, text: string, shape: z.ZodType<T>): HeadReading<T> {
  const lines = text.replace(/^\uFEFF/, '').split(/\r?\n/);
  const end = lines.findIndex((line, index) => index > 0 && FENCE.test(line));
  if (!FENCE.test(lines[0] ?? '') || end < 0) {
    const told = 'the file begins with a head: a line "---", the fields, and a line "---" again.';
    return { ok: false, faults: [{ file, line: 1, column: 1, text: told }], body: null, bodyLine: 1 };
  }
  const rest = { body: lines.slice(end + 1).join('\n'), bodyLine: end + 2 };
  const fields = readFields(file, lines.slice(1, end).join('\n'), shape, { above: 1, what: 'head' });
  if (!fields.ok) return { ...fields, ...rest };
  return { ok: true, head: fields.values, ...rest, lineOf: fields.lineOf };
}

/** Fields that have their shape, with the line of each; or what is wrong with them. */
export type FieldsReading<T> =
  | {
      readonly ok: true;
      readonly values: T;
      readonly lineOf: (path: readonly PropertyKey[]) => number;
    }
  | { readonly ok: false; readonly faults: readonly ContentFault[] };

/**
 * Reads YAML against a shape. `above` is the number of lines that stand above it in its file, `what` the word by which
 * faults call it: a head, or a whole file.
 */
export function readFields<T>(
  file: string,
  yaml: string,
  shape: z.ZodType<T>,
  { above, what }: { readonly above: number; readonly what: string },
): FieldsReading<T> {
  const counter = new LineCounter();
  const written = parseDocument(yaml, { lineCounter: counter });
  const placeOf = (offset: number) => {
    const { line, col } = counter.linePos(offset);
    return { line: line + above, column: col };
  };
  if (written.errors.length > 0) {
    const faults = written.errors.map(({ pos, message }) => {
      const text = `the ${what} is no YAML here: ${(message.split('\n')[0] ?? '').replace(/ at line \d+, column \d+:?$/, '')}.`;
      return { file, ...placeOf(pos[0]), text };
    });
    return { ok: false, faults };
  }
  const fields = plainFields(written, what);
  if (!fields.ok) return { ok: false, faults: [{ file, ...placeOf(fields.at), text: fields.text }] };
  const lineOf = (path: readonly PropertyKey[]): number => {
    for (let length = path.length; length > 0; length -= 1) {
      const node = written.getIn(path.slice(0, length) as (string | number)[], true) as
        { range?: [number, number, number] } | undefined;
      if (node?.range) return placeOf(node.range[0]).line;
    }
    return 1;
  };
  const read = shape.safeParse(fields.values);
  if (read.success) return { ok: true, values: read.data, lineOf };
  const known = shape instanceof z.ZodObject ? Object.keys(shape.shape) : [];
  const has = (path: readonly PropertyKey[]) => written.hasIn(path);
  return { ok: false, faults: shapeFaults(file, read.error.issues, { lineOf, has, fields: known, what }) };
}

// A star at the beginning of a value names an anchor in YAML, and only reading the values shows that there is none.
function plainFields(
  written: Document,
  what: string,
):
  | { readonly ok: true; readonly values: unknown }
  | { readonly ok: false; readonly at: number; readonly text: string } {
  try {
    return { ok: true, values: written.toJS() ?? {} };
  } catch {
    let at = 0;
    visit(written, {
      Alias(_, alias) {
        at = alias.range?.[0] ?? 0;
        return visit.BREAK;
      },
    });
    const text = `the ${what} has a value that begins with a star; put it in quotation marks.`;
    return { ok: false, at, text };
  }
}

function shapeFaults(
  file: string,
  issues: readonly z.core.$ZodIssue[],
  {
    lineOf,
    has,
    fields,
    what,
  }: {
    readonly lineOf: (path: readonly PropertyKey[]) => number;
    readonly has: (path: readonly PropertyKey[]) => boolean;
    readonly fields: readonly string[];
    readonly what: string;
  },
): ContentFault[] {
  return issues.flatMap((issue) => {
    if (issue.code === 'unrecognized_keys')
      return issue.keys.map((key) => {
        const near = issue.path.length === 0 ? nearestName(key, fields) : null;
        const todo = near ? `did you mean "${near}"?` : 'take it out or look for a slip of the pen.';
        const text = `"${[...issue.path, key].join('.')}" is no field of this ${what}; ${todo}`;
        return { file, line: lineOf([...issue.path, key]), column: null, text };
      });
    const where = issue.path.length > 0 ? `"${issue.path.join('.')}"` : `the ${what}`;
    const isMissing = issue.path.length > 0 && !has(issue.path);
    const text = `${where}${isMissing ? ' is missing' : ''}: ${issue.message}.`;
    return [{ file, line: lineOf(issue.path), column: null, text }];
  });
}
