// A moment as the desk's page tells it, on the farm's clock.
import { clockText, dateText } from '../../../shared/quantity/show.ts';

/** The day (ISO) and the minutes after midnight of a moment in a time zone; without one the browser's own. */
function onClock(ms: number, timeZone: string | undefined): { day: string; minutes: number } {
  const format = new Intl.DateTimeFormat('en-CA', {
    timeZone,
    hourCycle: 'h23',
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
  });
  const parts = Object.fromEntries(format.formatToParts(ms).map(({ type, value }) => [type, value]));
  return {
    day: `${parts['year']}-${parts['month']}-${parts['day']}`,
    minutes: Number(parts['hour']) * 60 + Number(parts['minute']),
  };
}

/** `10:45 AM`; with the date where it is another day than that of `now_ms`: `May 21, 2026, 10:45 AM`. */
export function momentText(
  ms: number,
  { now_ms, timeZone, lang }: { now_ms: number; timeZone: string | undefined; lang: string },
): string {
  const [then, now] = [onClock(ms, timeZone), onClock(now_ms, timeZone)];
  const clock = clockText(then.minutes, lang);
  return then.day === now.day ? clock : `${dateText(then.day, lang)}, ${clock}`;
}
