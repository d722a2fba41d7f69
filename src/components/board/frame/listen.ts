// Reads the page aloud from the sounds of the build: what can be seen, sentence by sentence, and marks where it is.
import { readText, type Sight } from '../../../../shared/board/readText.ts';
import { SOUND_TYPES, soundFiles, soundKey, type SoundList } from '../../../../shared/board/soundKey.ts';
import { LEVELS, type Level } from '../../../../shared/board/tell.ts';
import { BUSY, FORGET } from './alone.ts';
import { LEVEL_CHANGED, levelOf } from './level.ts';
import { wakeVolume } from './volume.ts';

/** On the page's root once a child has pressed Listen: a sentence that is tapped, or that comes up, is then read. */
const LISTENING = 'listening';
const READ = '[data-read]';

const SEEN: Sight<Node> = {
  textOf: (node) => (node.nodeType === Node.TEXT_NODE ? (node.nodeValue ?? '') : null),
  nameOf: (node) => (node instanceof Element ? node.localName : ''),
  attributeOf: (node, name) => (node instanceof Element ? node.getAttribute(name) : null),
  within: (node) => node.childNodes,
};

/** Shows the band's Listen button where this page has sound, and makes it work. A site that is only being worked on has none. */
export async function wakeListen(page: Document, isBuilt: boolean): Promise<void> {
  const button = page.querySelector<HTMLButtonElement>('[data-listen]');
  if (!button || !isBuilt) return;
  const folder = `${page.body.dataset['boardBase'] ?? '/'}barn/sound/${page.documentElement.lang}`;
  const player = new Audio();
  const files = await filesOf(folder, player);
  const soundOf = (element: Element, level: Level) =>
    files.get(soundKey(page.documentElement.lang, readText(element, level, SEEN)));
  const marked = [...page.querySelectorAll(READ)];
  if (!marked.some((element) => LEVELS.some((level) => soundOf(element, level) !== undefined))) return;
  readAloud(page, button, player, (element) => {
    const file = soundOf(element, levelOf(page));
    return file === undefined ? null : `${folder}/${file}`;
  });
  wakeVolume(page, player);
  button.hidden = false;
}

/** The sounds of the language that this browser can play, by key; none where the list does not come. */
async function filesOf(folder: string, player: HTMLMediaElement): Promise<Map<string, string>> {
  const response = await fetch(`${folder}.json`).catch(() => null);
  const list = response?.ok ? ((await response.json()) as SoundList) : {};
  const ends = Object.entries(list).filter(([end]) => player.canPlayType(SOUND_TYPES[end] ?? '') !== '');
  return soundFiles(Object.fromEntries(ends));
}

function readAloud(
  page: Document,
  button: HTMLButtonElement,
  player: HTMLMediaElement,
  soundOf: (element: Element) => string | null,
): void {
  const root = page.documentElement;
  let queue: Element[] = [];
  let current: Element | null = null;
  const shown = () => [...page.querySelectorAll(READ)].filter((one) => one.getClientRects().length > 0);

  const mark = (element: Element | null) => {
    current?.classList.remove('reading');
    current = element;
    button.setAttribute('aria-pressed', String(element !== null));
    if (element === null) return void delete root.dataset[BUSY];
    root.dataset[BUSY] = '';
    element.classList.add('reading');
    element.scrollIntoView({ block: 'nearest' });
  };
  const next = () => {
    for (let one = queue.shift(); one !== undefined; one = queue.shift()) {
      const sound = one.getClientRects().length > 0 ? soundOf(one) : null;
      if (sound === null) continue;
      mark(one);
      player.src = sound;
      // What cannot be played ends in an error of its own; what comes between needs no word.
      player.play().catch((error: unknown) => (error as Error).name === 'NotAllowedError' && stop());
      return;
    }
    mark(null);
  };
  const read = (elements: Element[]) => {
    root.dataset[LISTENING] = '';
    queue = elements;
    next();
  };
  const stop = () => {
    queue = [];
    player.pause();
    mark(null);
    delete root.dataset[LISTENING];
  };

  player.addEventListener('ended', next);
  player.addEventListener('error', next);
  button.addEventListener('click', () => (current ? stop() : read(shown())));
  page.addEventListener('click', ({ target }) => {
    if (!(target instanceof Element) || target.closest('a, button, summary')) return;
    const tapped = target.closest(READ);
    const all = shown();
    if (tapped && root.dataset[LISTENING] !== undefined) read(all.slice(all.indexOf(tapped)));
  });
  for (const end of [LEVEL_CHANGED, FORGET]) page.addEventListener(end, stop);
  page.defaultView?.addEventListener('pagehide', stop);
  readWhatComesUp(page, shown, (fresh) => root.dataset[LISTENING] !== undefined && read(fresh));
}

/** Tells what a thing to do has newly brought up, such as the reason after a guess. */
function readWhatComesUp(page: Document, shown: () => Element[], tell: (fresh: Element[]) => void): void {
  const doing = page.querySelector('#doing');
  if (!doing) return;
  let known = new Set<string>();
  const look = () => {
    const now = shown().map((one) => [one, one.textContent] as const);
    const fresh = now.filter(([, text]) => !known.has(text)).map(([one]) => one);
    known = new Set(now.map(([, text]) => text));
    return fresh;
  };
  look();
  new MutationObserver(() => {
    const fresh = look();
    if (fresh.length > 0) tell(fresh);
  }).observe(doing, { subtree: true, childList: true, characterData: true });
}
