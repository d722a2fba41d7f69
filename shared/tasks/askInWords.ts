// A question that is answered in sentences.
import type { Message } from '../sheet/message.ts';
import type { Ask } from './task.ts';

/** A question with ruled lines; its answer is a model of a good one, `accepted` what else is right. */
export function askInWords(
  prompt: Message,
  answer: Message,
  lines = 2,
  accepted: readonly Message[] = [],
): Ask {
  return { prompt, work: { is: 'lines', lines }, answer, values: [], accepted, steps: [] };
}
