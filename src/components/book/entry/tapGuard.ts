// Tells the echo of a tap from a tap: a wet thumb often hits twice, and the second hit lands on what lies below.

const ECHO_ms = 450;
const ECHO_px = 28;

/** Remembers where and when something was closed by a tap, and knows a tap on the same spot right after it. */
export function tapGuard(): {
  remember(tap: MouseEvent): void;
  isEcho(tap: MouseEvent): boolean;
} {
  let last: { x: number; y: number; at_ms: number } | null = null;
  return {
    remember(tap) {
      // A key press has no place, and no echo.
      last = tap.detail === 0 ? null : { x: tap.clientX, y: tap.clientY, at_ms: tap.timeStamp };
    },
    isEcho(tap) {
      if (!last || tap.detail === 0) return false;
      const isNear = Math.hypot(tap.clientX - last.x, tap.clientY - last.y) < ECHO_px;
      return isNear && tap.timeStamp - last.at_ms < ECHO_ms;
    },
  };
}
