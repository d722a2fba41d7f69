// What the desk's page is given, and how it asks the desk.
import type { WhoAnswer } from '../../../shared/book/access.ts';
import type { DeskState } from '../../../shared/book/deskState.ts';
import type { VisitsProps } from '../../../shared/trip/visits/visitsProps.ts';
import type { Words } from '../../../shared/words/words.ts';

/** Everything that the page works with, as plain JSON. */
export interface DeskProps {
  readonly words: Words;
  /** The site's path, with its last slash. */
  readonly base: string;
  /** Addresses of pages, by the key of their words under `desk.ways`; and of the Milk book. */
  readonly ways: Readonly<Record<string, string>>;
  readonly book: string;
  readonly pdf: string;
  /** What the visits to come are planned with. */
  readonly calendar: VisitsProps;
}

/** What the page knows: it is asking, there is no desk, this browser may not be told, or how the desk stands. */
export type DeskView =
  | { readonly kind: 'opening' | 'none' | 'visitor' }
  | {
      readonly kind: 'told';
      readonly who: WhoAnswer;
      readonly state: DeskState;
      /** The desk has not answered since. */
      readonly isOld: boolean;
    };

const OFTEN_ms = 2_000;
const SELDOM_ms = 15_000;

/** Asks again and again while the page is seen, more often while something is under way. Returns what ends that. */
export function followDesk(page: Document, base: string, show: (view: DeskView) => void): () => void {
  let last: DeskView = { kind: 'opening' };
  let timer = 0;
  let isOver = false;
  const ask = async () => {
    clearTimeout(timer);
    if (page.visibilityState !== 'hidden') {
      last = await look(base, last);
      if (isOver) return;
      show(last);
    }
    clearTimeout(timer);
    timer = setTimeout(() => void ask(), isUnderWay(last) ? OFTEN_ms : SELDOM_ms) as unknown as number;
  };
  const seen = () => page.visibilityState === 'visible' && void ask();
  page.addEventListener('visibilitychange', seen);
  void ask();
  return () => {
    isOver = true;
    clearTimeout(timer);
    page.removeEventListener('visibilitychange', seen);
  };
}

const isUnderWay = (view: DeskView) =>
  view.kind === 'told' && !view.isOld && view.state.rebuild !== null && view.state.rebuild.phase !== 'still';

/** One look; a desk that is silent leaves what was known, marked as old. */
async function look(base: string, last: DeskView): Promise<DeskView> {
  try {
    if (last.kind === 'opening' || last.kind === 'none') {
      const head = await fetch(location.pathname, { method: 'HEAD', cache: 'no-store' });
      // An answer that nobody reads to its end counts as broken off.
      await head.text();
      if (head.headers.get('Pailside-Live') !== 'yes') return { kind: 'none' };
    }
    const who = (await answerOf(`${base}desk/who`)) as WhoAnswer;
    if (who.who === 'visitor') return { kind: 'visitor' };
    return { kind: 'told', who, state: (await answerOf(`${base}desk/state`)) as DeskState, isOld: false };
  } catch {
    if (last.kind === 'told') return { ...last, isOld: true };
    return { kind: 'none' };
  }
}

async function answerOf(address: string): Promise<unknown> {
  const answer = await fetch(address, { cache: 'no-store' });
  if (!answer.ok) throw new Error(`${address} answered ${answer.status}`);
  return answer.json();
}
