// What pages and the desk say to each other about who may write: who is asking, the passphrase, a refusal.

/** Who asks: somebody at the desk's own machine, a phone that has said the words, or anybody else on the network. */
export type Who = 'here' | 'known' | 'visitor';

/** The answer of `GET desk/who`. */
export interface WhoAnswer {
  readonly who: Who;
  /** Whether the desk is open to the farm's network, so that the words can be entered. */
  readonly lan: boolean;
  /** The mark of the site that the desk serves; null in the moment of a swap. */
  readonly build: string | null;
}

/** What is sent to `POST desk/words`. */
export interface WordsPost {
  readonly words: string;
}

/**
 * The answer of `POST desk/words`. `wrong`: these are not the words. `wait`: too many wrong ones came; not looked at, try
 * again after `wait_s` seconds. `closed`: this desk is open to its own machine alone.
 */
export type WordsAnswer =
  | { readonly ok: true; readonly who: 'here' | 'known' }
  | { readonly ok: false; readonly why: 'wrong' | 'closed' }
  | { readonly ok: false; readonly why: 'wait'; readonly wait_s: number };

/**
 * Why the guard turned a request to `desk/…` away, as `{ why }` with the status in brackets. `visitor` (403): the words have
 * not been entered on this phone. `elsewhere` (403): another site's page asks. `kind` (415): not the type of content that the
 * address takes. `too long` (413).
 */
export type GuardAnswer = { readonly why: 'visitor' | 'elsewhere' | 'kind' | 'too long' };

/** One way in, as the desk's own machine shows it: `GET desk/invitation`. */
export interface Invitation {
  /** The address to scan; the words stand in its fragment, which no browser sends. */
  readonly url: string;
  /** The address to type, without the words. */
  readonly plain: string;
  /** The network it belongs to, by this machine's name for it, for instance `wlan0`. */
  readonly network: string;
  /** The QR code of `url`: an SVG path of squares, in a box of `size` units with its quiet border. */
  readonly qr: { readonly path: string; readonly size: number };
}

/** The answer of `GET desk/invitation`: the likeliest way in first; no words where the desk is not open to the network. */
export interface InvitationAnswer {
  readonly words: readonly string[];
  readonly ways: readonly Invitation[];
}

/** The letters of a passphrase alone, so that case, accents, spaces and hyphens make no difference. */
export function plainWords(text: string): string {
  return text
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z]/g, '');
}
