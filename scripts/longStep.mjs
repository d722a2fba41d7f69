// One line for a step that takes long: what is going on, how long it may take, the seconds so far.

const EVERY_ms = 15_000;

/**
 * Tells that a step has begun. On a terminal the line counts its seconds in place; elsewhere a new
 * line comes every 15 seconds. `end(word)` closes it.
 */
export function longStep(say, what, guess, stream = process.stdout) {
  const start = Date.now();
  const elapsed_s = () => Math.round((Date.now() - start) / 1000);
  const opening = `${what} … (${guess})`;
  const live = stream.isTTY === true;
  if (live) stream.write(opening);
  else say(opening);
  const tick = () => {
    if (live) stream.write(`\r\x1b[K${opening} ${elapsed_s()} s`);
    else say(`  … ${elapsed_s()} s`);
  };
  const timer = setInterval(tick, live ? 1000 : EVERY_ms);
  return {
    end(word) {
      clearInterval(timer);
      if (live) stream.write('\r\x1b[K');
      say(`${what} … ${word}, ${elapsed_s()} s`);
    },
  };
}
