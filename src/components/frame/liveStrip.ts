// The quiet strip of a page: what came in, and the page's own new numbers once they are built.
import type { EntryEvent } from '../../../shared/book/types.ts';
import { say } from '../../../shared/words/words.ts';
import { listenToDesk } from './deskStream.ts';
import { builtParts, fetchAnew, hasOwnScript, swapIn, watchHands, type Hands } from './followSite.ts';
import { askDesk } from './liveDesk.ts';
import type { ToldWith } from './liveTold.ts';

/** What the strip is given with the page. */
export interface StripProps extends ToldWith {
  /** The site's path, with its last slash. */
  readonly base: string;
  /** Whether the page changes by itself, or only when somebody asks it to. */
  readonly follows: 'by itself' | 'when asked';
  /** What is said where it waits: a key under `live`. */
  readonly waits: 'waits' | 'waitsPrinted';
}

/** How long a word stands, ms: one that ends a matter, and one whose end never comes. */
const READ_ms = 10_000;
const GIVEN_UP_ms = 180_000;
const LOOK_AGAIN_ms = 700;
// The head of an answer counts in seconds.
const SAME_ms = 1_500;

/** Where the strip speaks. */
interface Strip {
  say(told: readonly string[], forHow_ms: number): void;
  /** Offers the new numbers by a button. */
  offer(): void;
  hasSaid(): boolean;
}

/** Listens for what comes in, where there is a desk; does nothing on a page without a strip. */
export function wakeLiveStrip(page: Document, isBuilt: boolean): void {
  const view = page.defaultView;
  const place = page.querySelector<HTMLElement>('#live-strip');
  const carried = page.querySelector('#live-words')?.textContent;
  if (!isBuilt || !view || !place || !carried) return;
  const props = JSON.parse(carried) as StripProps;
  const strip = openStrip(place, props, view);
  const hands = watchHands(page);
  const follow = follower(page, view, { props, strip, hands });
  let rebuilds = false;
  let own_ms = Date.parse(page.lastModified) || 0;
  const follows = () => (rebuilds ? [say(props.words, 'live.follows')] : []);
  listenToDesk(view, {
    whileSeen: true,
    async hasDesk() {
      const head = await askDesk(view);
      rebuilds = head?.rebuilds === true;
      // The site was made anew while nobody looked at this page.
      if (head?.live && (head.modified_ms ?? 0) > own_ms + SAME_ms) {
        own_ms = head.modified_ms ?? own_ms;
        void follow();
      }
      return head?.live === true;
    },
    address: () => `${props.base}events?for=page`,
    hear: {
      entry: (told) =>
        void import('./liveTold.ts').then(({ tellEntry }) =>
          strip.say([...tellEntry(JSON.parse(told) as EntryEvent, props), ...follows()], GIVEN_UP_ms),
        ),
      book: () => {
        if (!strip.hasSaid()) strip.say([say(props.words, 'live.changed'), ...follows()], GIVEN_UP_ms);
      },
      site: () => {
        own_ms = Date.now();
        void follow();
      },
      stays: () => {
        if (strip.hasSaid()) strip.say([say(props.words, 'live.stays')], READ_ms);
      },
    },
  });
}

/** Takes the page's new numbers, one site after the other; the newest is the last. */
function follower(
  page: Document,
  view: Window & typeof globalThis,
  { props, strip, hands }: { props: StripProps; strip: Strip; hands: Hands },
): () => Promise<void> {
  let stands = builtParts(page);
  let isUnderWay = false;
  let isAsked = false;
  const take = async () => {
    const next = await fetchAnew(view);
    if (!next) return;
    if (builtParts(next.page) === stands) {
      if (strip.hasSaid()) strip.say([say(props.words, 'live.same')], READ_ms);
      return;
    }
    const asks = props.follows === 'when asked' || hands.isTouched();
    if (asks) return strip.offer();
    while (hands.isBusy()) await new Promise((done) => setTimeout(done, LOOK_AGAIN_ms));
    const newParts = builtParts(next.page);
    if (hasOwnScript(page) || !swapIn(page, next.page)) return view.location.reload();
    stands = newParts;
    strip.say([say(props.words, 'live.here')], READ_ms);
  };
  return async () => {
    isAsked = true;
    if (isUnderWay) return;
    isUnderWay = true;
    try {
      while (isAsked) {
        isAsked = false;
        await take();
      }
    } finally {
      isUnderWay = false;
    }
  };
}

function openStrip(place: HTMLElement, { words, waits }: StripProps, view: Window): Strip {
  const page = place.ownerDocument;
  const text = page.createElement('p');
  let ending = 0;
  let isOffering = false;
  const show = (...nodes: Node[]) => {
    view.clearTimeout(ending);
    place.replaceChildren(...nodes);
  };
  return {
    hasSaid: () => place.childElementCount > 0 && !isOffering,
    say(told, forHow_ms) {
      // What is offered stays offered: it is of more use than the next milking.
      if (isOffering) return;
      text.textContent = told.join(' ');
      show(text);
      ending = view.setTimeout(show, forHow_ms);
    },
    offer() {
      if (isOffering) return;
      isOffering = true;
      text.textContent = say(words, `live.${waits}`);
      const button = page.createElement('button');
      button.type = 'button';
      button.textContent = say(words, 'live.take');
      button.addEventListener('click', () => view.location.reload());
      show(text, button);
    },
  };
}
