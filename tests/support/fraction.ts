// Exact fractions in the plainest way, for references that share no code with the engine.

/** `num / den`, den above 0, not reduced unless it grows. */
export interface Exact {
  readonly num: bigint;
  readonly den: bigint;
}

export const ZERO: Exact = { num: 0n, den: 1n };

export function exact(num: number | bigint, den: number | bigint = 1n): Exact {
  return reduced({ num: BigInt(num), den: BigInt(den) });
}

/** A decimal text, such as `3785.411784`. */
export function decimal(text: string): Exact {
  const [whole = '0', part = ''] = text.split('.');
  return exact(BigInt(whole + part), 10n ** BigInt(part.length));
}

export function plus(a: Exact, b: Exact): Exact {
  return reduced({ num: a.num * b.den + b.num * a.den, den: a.den * b.den });
}

export function times(a: Exact, b: Exact): Exact {
  return reduced({ num: a.num * b.num, den: a.den * b.den });
}

export function over(a: Exact, b: Exact): Exact {
  return reduced({ num: a.num * b.den, den: a.den * b.num });
}

export function isMore(a: Exact, b: Exact): boolean {
  return a.num * b.den > b.num * a.den;
}

export function sumOf(parts: readonly Exact[]): Exact {
  return parts.reduce(plus, ZERO);
}

/** The nearest double, to within one unit in its last place, however long the numbers are. */
export function asDouble({ num, den }: Exact): number {
  if (num === 0n) return 0;
  const bits = (value: bigint) => value.toString(2).length;
  const shift = 64 - (bits(num) - bits(den));
  const scaled = shift >= 0 ? (num << BigInt(shift)) / den : num / (den << BigInt(-shift));
  return Number(scaled) * 2 ** -shift;
}

function reduced({ num, den }: Exact): Exact {
  let [a, b] = [num < 0n ? -num : num, den];
  while (b > 0n) [a, b] = [b, a % b];
  return a > 1n ? { num: num / a, den: den / a } : { num, den };
}
