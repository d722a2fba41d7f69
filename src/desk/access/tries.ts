// Wrong passphrases make everybody who enters them wait longer and longer, each address for itself and all together.

/** How many wrong tries are free, and how the waits grow after them. */
export interface Patience {
  readonly free: number;
  readonly first_ms: number;
  readonly longest_ms: number;
}

/** The count of wrong passphrases. */
export interface Tries {
  /** How long an address has to wait before its next try is looked at, ms; 0 for now. */
  wait_ms(address: string): number;
  wrong(address: string): void;
  /** The address has said the right words: its slips are forgotten. */
  right(address: string): void;
}

interface Count {
  wrong: number;
  free_ms: number;
  last_ms: number;
}

// A slip of a wet thumb costs nothing; the fourth wrong try in an hour waits 2 s, the tenth two minutes.
const EACH: Patience = { free: 3, first_ms: 2_000, longest_ms: 300_000 };
// Whoever has many addresses is slowed as well. Phones that are known already do not notice.
const ALL: Patience = { free: 30, first_ms: 1_000, longest_ms: 60_000 };
const FORGET_ms = 3_600_000;
const MOST_ADDRESSES = 500;

/** Counts wrong tries on a clock; no more than 500 addresses are remembered, the newest of them. */
export function countTries(now_ms: () => number): Tries {
  const each = new Map<string, Count>();
  const all: Count = { wrong: 0, free_ms: 0, last_ms: 0 };
  const fresh = (count: Count) => {
    const now = now_ms();
    // A clock that was set back must not lock anybody out for years.
    if (Math.abs(now - count.last_ms) > FORGET_ms) Object.assign(count, { wrong: 0, free_ms: 0 });
    return count;
  };
  const left = (count: Count | undefined, { longest_ms }: Patience) =>
    count ? Math.min(longest_ms, Math.max(0, fresh(count).free_ms - now_ms())) : 0;
  return {
    wait_ms: (address) => Math.max(left(each.get(netOf(address)), EACH), left(all, ALL)),
    wrong: (address) => {
      const net = netOf(address);
      const count = each.get(net) ?? { wrong: 0, free_ms: 0, last_ms: 0 };
      // Put in anew, so that the map is in the order of the last slip.
      each.delete(net);
      each.set(net, count);
      if (each.size > MOST_ADDRESSES) each.delete(each.keys().next().value ?? '');
      add(fresh(count), EACH, now_ms());
      add(fresh(all), ALL, now_ms());
    },
    right: (address) => void each.delete(netOf(address)),
  };
}

function add(count: Count, { free, first_ms, longest_ms }: Patience, now: number): void {
  count.wrong += 1;
  count.last_ms = now;
  const over = count.wrong - free;
  count.free_ms = over < 1 ? 0 : now + Math.min(longest_ms, first_ms * 2 ** Math.min(over - 1, 20));
}

/** One IPv6 machine has as many addresses as it likes, all with the same first half. */
function netOf(address: string): string {
  if (!address.includes(':')) return address;
  const [head = '', tail] = address.split('%', 1)[0]?.split('::') ?? [];
  const first = head.split(':').filter(Boolean);
  const last = tail === undefined ? [] : tail.split(':').filter(Boolean);
  const gap = tail === undefined ? 0 : Math.max(0, 8 - first.length - last.length);
  return [...first, ...Array.from({ length: gap }, () => '0'), ...last].slice(0, 4).join(':');
}
