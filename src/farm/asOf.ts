// Which day is "today": the AS_OF setting, else farm.yaml, else the clock on the farm.
import { dayNumber } from '../../shared/calendar/day.ts';
import { dateFault } from './dates.ts';
import { dayAt } from './entered.ts';
import { faultAt, type Findings } from './fault.ts';

/** Today, and who says so. */
export interface AsOf {
  readonly asOf: number;
  readonly asOfFrom: 'AS_OF' | 'farm.yaml' | 'clock';
}

/** Source: the farm folder's contract. An AS_OF that is no date is a fault. */
export function readAsOf(
  setting: string | undefined,
  written: string | undefined,
  now: { now_ms: number; timeZone: string },
  findings: Findings,
): AsOf {
  const today = { asOf: dayNumber(dayAt(now.now_ms, now.timeZone)) ?? 0, asOfFrom: 'clock' } as const;
  const text = setting?.trim() ?? '';
  if (text !== '') {
    const asOf = dayNumber(text);
    if (asOf !== null) return { asOf, asOfFrom: 'AS_OF' };
    findings.faults.push(faultAt('AS_OF', null, dateFault(text)));
    return { ...today, asOfFrom: 'AS_OF' };
  }
  const asOf = written === undefined ? null : dayNumber(written);
  return asOf === null ? today : { asOf, asOfFrom: 'farm.yaml' };
}
