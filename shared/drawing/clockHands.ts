// Where the hands of a clock point.

/** Angles clockwise from twelve, degrees. The hour hand moves on with the minutes. */
export interface Hands {
  readonly hour_deg: number;
  readonly minute_deg: number;
}

/**
 * The hands at a time of day, `HH:MM` from 00:00 to 23:59; anything else throws.
 * @example clockHands('06:30') // => { hour_deg: 195, minute_deg: 180 }
 */
export function clockHands(time: string): Hands {
  const match = /^([01]?\d|2[0-3]):([0-5]\d)$/.exec(time);
  if (!match) throw new Error(`"${time}" is no time of day.`);
  const [hours, minutes] = [Number(match[1]), Number(match[2])];
  return { hour_deg: (hours % 12) * 30 + minutes / 2, minute_deg: minutes * 6 };
}

/** A point at an angle from twelve, for a clock about (0, 0); y grows downwards. */
export function onDial(angle_deg: number, radius: number): { readonly x: number; readonly y: number } {
  const turn = ((angle_deg - 90) * Math.PI) / 180;
  return { x: Math.cos(turn) * radius, y: Math.sin(turn) * radius };
}
