// A fact as a page shows it: one language, its source, how sure we are.

/** A fact in the words of one language, never without its source. */
export interface ShownFact {
  readonly id: string;
  readonly text: string;
  readonly source: string;
  readonly sure: 'seen' | 'memory' | 'practice';
}

/** Facts without those that stand twice, in their order. */
export function onlyOnce(facts: readonly ShownFact[]): ShownFact[] {
  return [...new Map(facts.map((fact) => [fact.id, fact])).values()];
}
