// What the calendar's pages carry to the browser: no school stands in it, since the built site may be read by anybody.
import type { Words } from '../../words/words.ts';
import type { StationSign } from '../tripProps.ts';
import type { TripFarm, TripWish } from '../types.ts';
import type { StationText, TripSeason } from '../visitTypes.ts';
import type { TakenSpan } from './taken.ts';

/** What both pages work with. */
interface CalendarProps {
  /** The site's path; ends in `/`. */
  readonly base: string;
  readonly farm: TripFarm;
  readonly season: TripSeason;
  readonly taken: readonly TakenSpan[];
  /** The farm's day, ISO. */
  readonly today: string;
  readonly words: Words;
  /** Addresses of pages. */
  readonly links: {
    readonly visits: string;
    readonly day: string;
    readonly after: string;
    readonly trip: string;
    readonly book: string;
  };
}

/** The page of a month. */
export interface VisitsProps extends CalendarProps {
  readonly stations: readonly StationSign[];
  /** What a teacher's link leaves out. */
  readonly usual: TripWish;
}

/** The sheet of a day. */
export interface DayProps extends CalendarProps {
  readonly stations: readonly Pick<StationText, 'id' | 'name' | 'does' | 'ready' | 'care'>[];
  readonly farmName: string;
}
