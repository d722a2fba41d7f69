// The short name of a new doe, made from her name.

const LONGEST = 60;

/**
 * A short name that can stand in a web address and is not taken yet: small letters of any script, digits, hyphens.
 * Empty where the name has none of these.
 * @example doeId('Doña Perla', ['dona-perla']) // => 'doña-perla'
 * @example doeId('Bell', ['BELL']) // => 'bell-2'
 */
export function doeId(name: string, taken: readonly string[]): string {
  const plain = name
    .normalize('NFC')
    .toLowerCase()
    .replace(/[^\p{L}\p{M}\p{N}_-]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, LONGEST - 4);
  if (plain === '') return '';
  const others = new Set(taken.map((id) => id.normalize('NFC').toLowerCase()));
  for (let count = 1; ; count += 1) {
    const id = count === 1 ? plain : `${plain}-${count}`;
    if (!others.has(id)) return id;
  }
}
