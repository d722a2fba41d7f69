// Which doe a cell names: ids of does.csv, whatever the letter case.
import type { Doe } from '../../shared/herd/types.ts';
import { nearestName } from './nearest.ts';

/** Looks up a doe by what a cell says. `known` is false where does.csv could not be read at all. */
export interface DoeNames {
  readonly known: boolean;
  /** Her id as does.csv writes it; null where nobody, or more than one, is meant. */
  readonly idOf: (text: string) => string | null;
  /** For a text that names no doe: the id that was most likely meant, and what to do. */
  readonly unknown: (text: string) => { expected: string; nearest: string | null; todo: string };
}

const MOST_COMPARED = 1000;
const plain = (text: string) => text.normalize('NFC').toLowerCase();

/** A lookup over the herd; `alsoIds` are ids of rows with a fault of their own, named once already. */
export function doeNames(does: readonly Doe[], alsoIds: readonly string[], known: boolean): DoeNames {
  const ids = [...does.map(({ id }) => id), ...alsoIds];
  const exact = new Set(ids);
  const bySpelling = new Map<string, Set<string>>();
  for (const id of ids) bySpelling.set(plain(id), (bySpelling.get(plain(id)) ?? new Set()).add(id));
  const cache = new Map<string, string | null>();
  const lookUp = (text: string) => {
    const id = text.normalize('NFC');
    if (exact.has(id)) return id;
    const alike = [...(bySpelling.get(plain(id)) ?? [])];
    return alike.length === 1 ? (alike[0] ?? null) : null;
  };
  const idOf = (text: string) => {
    let id = cache.get(text);
    if (id === undefined) cache.set(text, (id = lookUp(text)));
    return id;
  };
  const likely = new Map<string, string | null>();
  const unknown = (text: string) => {
    const alike = [...(bySpelling.get(plain(text)) ?? [])];
    if (alike.length > 1)
      return {
        expected: `${alike.join(' or ')}, with its own capitals`,
        nearest: null,
        todo: 'write which of the two is meant',
      };
    let nearest = likely.get(text);
    if (nearest === undefined) {
      // A column of other things under "doe" would be compared for minutes, to no use.
      nearest = likely.size < MOST_COMPARED ? nearestDoe(text, does, ids) : null;
      likely.set(text, nearest);
    }
    return {
      expected: 'the short name of a doe in does.csv',
      nearest,
      todo: nearest
        ? 'correct the name, or give her a row in does.csv'
        : 'give her a row in does.csv, or correct the name',
    };
  };
  return { known, idOf, unknown };
}

// People write a doe's full name where her short one belongs.
function nearestDoe(text: string, does: readonly Doe[], ids: readonly string[]): string | null {
  const byName = does.find((doe) => plain(doe.name) === plain(text));
  if (byName) return byName.id;
  const nearId = nearestName(text, ids);
  if (nearId !== null) return nearId;
  const name = nearestName(
    text,
    does.map((doe) => doe.name),
  );
  return does.find((doe) => doe.name === name)?.id ?? null;
}
