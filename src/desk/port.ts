// Which port the desk is asked to open.
import { PlainError } from '../build/plainError.ts';

/** The port of a start that names none. */
export const USUAL_PORT = 4173;

/** Reads `PORT`. Throws PlainError where it is no port number. */
export function portOf(text: string | undefined): number {
  if (text === undefined || text === '') return USUAL_PORT;
  const port = /^\d{1,5}$/.test(text) ? Number(text) : Number.NaN;
  if (!(port <= 65_535))
    throw new PlainError(`PORT is "${text}"; a port is a whole number from 0 to 65535, for instance 4173.`);
  return port;
}
