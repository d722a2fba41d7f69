// The words of one language: a message by its key, its slots filled, its plural chosen.

/** A message: one text, or one for each plural category that the language has (`one`, `many`, `other`). */
export type Entry = string | { readonly [category: string]: string };
/** All messages of one language by dotted key. */
export type Dictionary = Readonly<Record<string, Entry>>;
/** What fills the slots of a message. `n` also chooses its plural. */
export type Slots = Readonly<Record<string, string | number>>;

/** Words of one language. */
export interface Words {
  /** BCP 47 tag of the language, such as `en` or `es`. */
  readonly lang: string;
  readonly entries: Dictionary;
}

const SLOT = /\{(\w+)\}(\.?)/g;
// Spanish says one o'clock in the singular.
const ONE_O_CLOCK = /\blas (?=1:\d\d)/g;

/**
 * The message of a key with its slots filled. A missing key or slot is a fault of ours and throws,
 * naming the key, so that a build never prints a hole. A value that ends in a point, such as `p.m.`, takes the place of
 * the sentence's own.
 * @example say({ lang: 'en', entries: { jars: { one: '{n} jar', other: '{n} jars' } } }, 'jars', { n: 2 }) // => '2 jars'
 */
export function say(words: Words, key: string, slots: Slots = {}): string {
  const entry = words.entries[key];
  if (entry === undefined) throw new Error(`No words for "${key}" in ${words.lang}.`);
  const text = typeof entry === 'string' ? entry : pluralOf(words, key, entry, slots['n']);
  const filled = text.replace(SLOT, (_, name: string, point: string) => {
    const value = slots[name];
    if (value === undefined) throw new Error(`"${key}" in ${words.lang} needs a value for {${name}}.`);
    return String(value).endsWith('.') ? String(value) : `${value}${point}`;
  });
  return words.lang.startsWith('es') ? filled.replace(ONE_O_CLOCK, 'la ') : filled;
}

// Making the rules of a language takes longer than all else that a tap does.
const rulesOf = new Map<string, Intl.PluralRules>();

function pluralRules(lang: string): Intl.PluralRules {
  const known = rulesOf.get(lang) ?? new Intl.PluralRules(lang);
  rulesOf.set(lang, known);
  return known;
}

function pluralOf(
  words: Words,
  key: string,
  forms: Readonly<Record<string, string>>,
  n: string | number | undefined,
): string {
  // Without its number a plural would be picked blindly, and read wrong without a word.
  if (n === undefined) throw new Error(`"${key}" in ${words.lang} needs {n} to choose its plural.`);
  // Nothing at all often wants a sentence of its own, which no language's rules ask for.
  const category = Number(n) === 0 && forms['zero'] ? 'zero' : pluralRules(words.lang).select(Number(n));
  const text = forms[category] ?? forms['other'];
  if (text === undefined)
    throw new Error(`"${key}" in ${words.lang} has no text for "${category}" or "other".`);
  return text;
}

/**
 * Flattens nested entries to dotted keys. An object whose keys are all plural categories is one entry.
 * @example flatten({ jar: { one: 'jar', other: 'jars' }, home: { title: 'Home' } })
 */
export function flatten(tree: Readonly<Record<string, unknown>>, prefix = ''): Dictionary {
  const entries: Record<string, Entry> = {};
  for (const [name, value] of Object.entries(tree)) {
    const key = prefix === '' ? name : `${prefix}.${name}`;
    if (typeof value === 'string') entries[key] = value;
    else if (isPlural(value)) entries[key] = value;
    else if (value !== null && typeof value === 'object')
      Object.assign(entries, flatten(value as Record<string, unknown>, key));
    else throw new Error(`"${key}" must be a text.`);
  }
  return entries;
}

const CATEGORIES = new Set(['zero', 'one', 'two', 'few', 'many', 'other']);

function isPlural(value: unknown): value is Record<string, string> {
  if (value === null || typeof value !== 'object') return false;
  const pairs = Object.entries(value);
  return pairs.length > 0 && pairs.every(([name, text]) => CATEGORIES.has(name) && typeof text === 'string');
}
