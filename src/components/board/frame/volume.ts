// How loud the board reads: three steps, kept for this child, back in the middle when the board goes home.
import { keepText, takeText } from '../keep/box.ts';
import { FORGET } from './alone.ts';

const KEY = 'pailside.volume';
// Reached late: in a browser that keeps nothing the bare name already throws.
const passing = () => sessionStorage;
/** The steps with the share of full loudness: 8 dB lie between one and the next. */
const STEPS = { quiet: 0.16, middle: 0.4, loud: 1 } as const;
type Step = keyof typeof STEPS;
const NEXT: Readonly<Record<Step, Step>> = { quiet: 'middle', middle: 'loud', loud: 'quiet' };

const isStep = (word: string | null): word is Step => word !== null && word in STEPS;

/** Makes the band's volume button work on what plays, and shows it. */
export function wakeVolume(page: Document, player: HTMLMediaElement): void {
  const button = page.querySelector<HTMLButtonElement>('[data-volume]');
  if (!button) return;
  const kept = takeText(passing, KEY);
  let step: Step = isStep(kept) ? kept : 'middle';
  const set = (to: Step) => {
    step = to;
    player.volume = STEPS[to];
    button.dataset['volume'] = to;
    button.setAttribute('aria-label', button.dataset[to] ?? '');
  };
  button.addEventListener('click', () => {
    set(NEXT[step]);
    keepText(passing, KEY, step);
  });
  page.addEventListener(FORGET, () => {
    keepText(passing, KEY, null);
    set('middle');
  });
  set(step);
  button.hidden = false;
}
