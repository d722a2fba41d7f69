// What the terminal says of the way in for phones.
import type { Access } from './access.ts';
import { invitationOf, terminalCode } from './invitation.ts';
import type { OwnAddress } from './network.ts';

/** Where the desk is and who reads what is said. */
export interface Telling {
  /** The desk's address on this machine, up to and with the base path. */
  readonly url: string;
  /** Whether a person reads along: what goes into a file or a log must not hold the words. */
  readonly isTerminal: boolean;
  readonly addresses?: readonly OwnAddress[];
}

/** The lines for a desk that is open to the farm's network; none for one that is not. */
export function waysIn({ lan }: Access, { url, isTerminal, addresses }: Telling): string[] {
  if (!lan) return [];
  const { port, pathname } = new URL(url);
  const { words, ways } = invitationOf(
    lan.secrets.words,
    { port: Number(port || 80), base: pathname },
    addresses,
  );
  const [first, ...others] = ways;
  const page = `${url}desk/`;
  if (!first)
    return [
      '\nThis machine is on no network yet. Once it is, phones find the desk by themselves under its address;',
      `the page ${page} on this machine shows the code and the words.`,
    ];
  const lines = [
    '\nOpen to phones on the farm\'s network. Anyone on it can read the site; writing needs the words.\n',
    `  Milk book   ${first.plain}   (${first.network})`,
    ...others.map(({ plain, network }) => `              ${plain}   (${network})`),
  ]; // prettier-ignore
  if (!isTerminal)
    return [...lines, `\nThe words and their code are shown at ${page} on this machine alone.`];
  return [
    ...lines,
    `\n  Words       ${words.join(' ')}\n`,
    'Scan this once with each phone that may write:\n',
    ...terminalCode(first.url).map((line) => `  ${line}`),
    `\nThe same stands at ${page} on this machine. Other words, and an end to all phones that know these: npm start -- --lan --new-words`,
  ];
}
