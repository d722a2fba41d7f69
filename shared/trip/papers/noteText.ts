// What the plan changed by itself, as a teacher reads it.
import { sizedText } from '../../quantity/show.ts';
import type { TripNote } from '../types.ts';
import { listText, spanOf, teller, textOf } from './tell.ts';
import type { PaperTongue, TripCase } from './types.ts';

/** Whether a note tells of milking that is not seen, which has a passage of its own. */
export function isOfMilking(note: TripNote): boolean {
  return note.kind === 'milking at another time' || ('why' in note && note.why === 'no milking');
}

/** A note as one sentence. */
export function noteText(note: TripNote, tongue: PaperTongue): string {
  const { words } = tongue;
  const tell = teller(words);
  const name = (id: string): string => textOf(tongue, id).name;
  switch (note.kind) {
    case 'stand-in':
      return tell(`note.stand-in.${keyOf(note.why)}`, { station: name(note.station), by: name(note.by) });
    case 'left out':
      return tell(`note.left-out.${keyOf(note.why)}`, { station: name(note.station) });
    case 'milking at another time': {
      const times = note.milkings.map((span) => spanOf(span, words));
      return tell('note.other-time', { times: listText(times, words) });
    }
    case 'few adults': {
      const [per, aim] = [sizedText(note.perAdult, words.lang), sizedText(note.aim, words.lang)];
      return tell('note.few-adults', { per, aim });
    }
    case 'wash by party':
      return tell('note.wash-by-party', { n: Math.ceil(note.minutes) });
    case 'farm chose':
      return tell('note.farm-chose', { list: listText(note.stations.map(name), words) });
  }
}

/** The key of a reason, in one word. */
function keyOf(why: Extract<TripNote, { why: string }>['why']): string {
  return why === 'no milking' ? 'milking' : why;
}

/** Why no doe is milked that day, in a sentence; null where one is due. */
export function noMilkingText({ ground }: TripCase, tongue: PaperTongue): string | null {
  if (ground.noMilking === null) return null;
  return teller(tongue.words)(`no-milking.${ground.noMilking.replace(' ', '-')}`);
}
