// Wash hands: water, soap, twenty seconds of scrubbing over five places, rinse, dry.
// Steps and times after the US Centers for Disease Control and Prevention, "About Handwashing" and animals in public settings.
import { say, type Words } from '../../words/words.ts';
import { tellTap, textsOf, type Told } from './told.ts';

/** A place on the hands where germs sit. */
export type HandPlace = 'palms' | 'backs' | 'between' | 'thumbs' | 'nails';
/** Something at the sink; the gel is for where there is none. */
export type WashTool = 'wet' | 'soap' | 'rinse' | 'dry' | 'gel';

/** The places to scrub, in no order that matters. */
export const HAND_PLACES: readonly HandPlace[] = Object.freeze([
  'palms',
  'backs',
  'between',
  'thumbs',
  'nails',
]);
/** What stands at the sink, in the order of its use; the gel last. */
export const WASH_TOOLS: readonly WashTool[] = Object.freeze(['wet', 'soap', 'rinse', 'dry', 'gel']);
/** Seconds of scrubbing, at least. Source: CDC. */
export const SCRUB_SECONDS = 20;
/** Seconds for each place: a tap is a second. */
export const SECONDS_A_PLACE = SCRUB_SECONDS / 5;

/** How far the washing is. */
export interface WashState {
  /** Tools used: 0 none, 1 water, 2 soap, 3 rinsed, 4 dried. */
  readonly used: number;
  /** Seconds of scrubbing at each place, 0 to `SECONDS_A_PLACE`. */
  readonly scrubbed: Readonly<Record<HandPlace, number>>;
}

/** The page of washing needs nothing of the herd. */
export interface WashPlan {
  readonly seconds: number;
}

/** The plan of any week. */
export function washPlan(): WashPlan {
  return { seconds: SCRUB_SECONDS };
}

/** Hands that come from the goats. */
export const DIRTY: WashState = Object.freeze<WashState>({
  used: 0,
  scrubbed: Object.freeze({ palms: 0, backs: 0, between: 0, thumbs: 0, nails: 0 }),
});

/** Seconds scrubbed in all. */
export function secondsOf({ scrubbed }: WashState): number {
  return HAND_PLACES.reduce((sum, place) => sum + scrubbed[place], 0);
}

/** Soapy hands that have been scrubbed at every place. */
function allScrubbed(state: WashState): WashState {
  const scrubbed = Object.fromEntries(HAND_PLACES.map((place) => [place, SECONDS_A_PLACE]));
  return { ...state, scrubbed: scrubbed as WashState['scrubbed'] };
}

/** All seconds at once, for a child who does not want to count. Asked for only while hands are soapy. */
export function washSkip(words: Words, state: WashState): WashChange {
  return { state: allScrubbed(state), told: tellTap(words, 'barn.do.wash.scrubbed', true) };
}

/** The hands after a tap, and what the board says to it. */
export interface WashChange {
  readonly state: WashState;
  readonly told: Told;
}

/** What a tap changes, and what the board says to it. */
export function washTap(words: Words, state: WashState, tapped: HandPlace | WashTool): WashChange {
  const isPlace = (HAND_PLACES as readonly string[]).includes(tapped);
  return isPlace ? scrub(words, state, tapped as HandPlace) : use(words, state, tapped as WashTool);
}

function scrub(words: Words, state: WashState, place: HandPlace) {
  const said = (key: string, right: boolean) => tellTap(words, `barn.do.wash.${key}`, right);
  if (state.used < 2) return { state, told: said(`germs.${place}`, false) };
  if (state.used > 2 || state.scrubbed[place] === SECONDS_A_PLACE)
    return { state, told: said('clean', false) };
  const after = { ...state, scrubbed: { ...state.scrubbed, [place]: state.scrubbed[place] + 1 } };
  const isAll = secondsOf(after) === SCRUB_SECONDS;
  return { state: after, told: isAll ? said('scrubbed', true) : said(`scrub.${place}`, true) };
}

function use(words: Words, state: WashState, tool: WashTool) {
  const said = (key: string, right: boolean) => tellTap(words, `barn.do.wash.${key}`, right);
  const place = WASH_TOOLS.indexOf(tool);
  if (tool === 'gel') return { state, told: said('wrong.gel', false) };
  if (place < state.used) return { state, told: said(`again.${tool}`, false) };
  if (place > state.used) return { state, told: said(`wrong.${tool}${dryWhen(state, tool)}`, false) };
  const unscrubbed = tool === 'rinse' && secondsOf(state) < SCRUB_SECONDS;
  if (unscrubbed) return { state, told: said('wrong.unscrubbed', false) };
  return { state: { ...state, used: state.used + 1 }, told: said(`right.${tool}`, true) };
}

// A towel on dry, dirty hands and a towel on soap are two different mistakes.
const dryWhen = ({ used }: WashState, tool: WashTool) => (tool === 'dry' && used === 2 ? 'Soapy' : '');

/** Everything that this page may say. */
export function washSays(words: Words): string[] {
  const soapy: WashState = { ...DIRTY, used: 2 };
  const states = [DIRTY, { ...DIRTY, used: 1 }, soapy, ...almost(), allScrubbed(soapy)];
  const later = [3, 4].map((used) => ({ ...allScrubbed(soapy), used }));
  const taps = [...states, ...later].flatMap((state) =>
    [...WASH_TOOLS, ...HAND_PLACES].map((tapped) => washTap(words, state, tapped).told),
  );
  return [
    say(words, 'barn.do.wash.ask'),
    say(words, 'barn.do.wash.scrubAsk'),
    say(words, 'barn.do.wash.done'),
    say(words, 'barn.do.wash.skip'),
    ...WASH_TOOLS.map((tool) => say(words, `barn.do.wash.tool.${tool}`)),
    ...HAND_PLACES.map((place) => say(words, `barn.do.wash.place.${place}`)),
    ...textsOf(taps),
  ];
}

// The last second can fall on any place.
const almost = (): WashState[] => {
  const all = allScrubbed({ ...DIRTY, used: 2 });
  return HAND_PLACES.map((place) => ({
    ...all,
    scrubbed: { ...all.scrubbed, [place]: SECONDS_A_PLACE - 1 },
  }));
};
