// The valid name that a mistyped one most likely meant.

const LONGEST_COMPARED = 64;

/**
 * The candidate with the fewest slips (a letter wrong, missing, added or two swapped) from the
 * text, whatever the letter case, or null where none is close: no slip in words of two letters,
 * one in up to five, two in up to eight, three in longer ones.
 */
export function nearestName(text: string, candidates: Iterable<string>): string | null {
  const wanted = plain(text);
  if (wanted === '' || wanted.length > LONGEST_COMPARED) return null;
  let best: { name: string; slips: number } | null = null;
  for (const name of candidates) {
    const candidate = plain(name);
    const longer = Math.max(wanted.length, candidate.length);
    const most = longer <= 2 ? 0 : longer <= 5 ? 1 : longer <= 8 ? 2 : 3;
    if (candidate.length > LONGEST_COMPARED || Math.abs(wanted.length - candidate.length) > most) continue;
    const slips = slipsBetween(wanted, candidate);
    if (slips <= most && (best === null || slips < best.slips)) best = { name, slips };
  }
  return best?.name ?? null;
}

const plain = (text: string) => text.normalize('NFC').toLowerCase().trim();

/** Restricted Damerau-Levenshtein distance. Source: textbook recurrence (from memory). */
function slipsBetween(a: string, b: string): number {
  let twoUp: number[] = [];
  let above = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i += 1) {
    const row = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const change = (above[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      let slips = Math.min((above[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, change);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        slips = Math.min(slips, (twoUp[j - 2] ?? 0) + 1);
      row.push(slips);
    }
    twoUp = above;
    above = row;
  }
  return above[b.length] ?? 0;
}
