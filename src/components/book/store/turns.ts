// Lets the pages of one phone ask the desk one after the other, where the browser can tell them of each other.

// A page that sleeps in the background may hold its turn for ever; entries may be sent twice without harm.
const PATIENCE_ms = 3_000;

/** Does a piece of work in its turn, or without one where no turn comes soon. */
export async function inTurn<T>(name: string, work: () => Promise<T>): Promise<T> {
  // Only where the browser trusts the address.
  const locks = (navigator as Partial<Navigator>).locks;
  if (!locks) return work();
  const waiting = new AbortController();
  const patience = setTimeout(() => waiting.abort(), PATIENCE_ms);
  let began = false;
  const turn = locks.request(name, { signal: waiting.signal }, () => {
    began = true;
    clearTimeout(patience);
    return work();
  });
  try {
    return await turn;
  } catch (error) {
    if (began) throw error;
    return work();
  }
}
