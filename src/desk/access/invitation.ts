// How other phones are let in: the address to scan for each network that this machine is on.
import { encode, type QrCodeGenerateResult } from 'uqr';
import type { Invitation, InvitationAnswer } from '../../../shared/book/access.ts';
import { ownAddresses, type OwnAddress } from './network.ts';

/** The invitation of a desk that listens on `port` below `base`, which ends in `/`. */
export function invitationOf(
  words: readonly string[],
  place: { port: number; base: string },
  addresses: readonly OwnAddress[] = ownAddresses(),
): InvitationAnswer {
  const ways = addresses.map(({ address, network }): Invitation => {
    const plain = `http://${address}:${place.port}${place.base}book/`;
    const url = `${plain}#words=${words.join('-')}`;
    return { url, plain, network, qr: drawn(codeOf(url)) };
  });
  return { words, ways };
}

// Four units of quiet on each side, as the standard asks (ISO/IEC 18004).
const codeOf = (url: string): QrCodeGenerateResult => encode(url, { ecc: 'M', border: 4 });

function drawn({ data, size }: QrCodeGenerateResult): Invitation['qr'] {
  const rows = data.map((row, y) => row.map((dark, x) => (dark ? `M${x} ${y}h1v1h-1z` : '')).join(''));
  return { path: rows.join(''), size };
}

/** The code of an address as lines for a terminal, two rows of it a line, black on white whatever the terminal's colours. */
export function terminalCode(url: string): string[] {
  const { data, size } = codeOf(url);
  const lines: string[] = [];
  for (let y = 0; y < size; y += 2) {
    const upper = data[y] ?? [];
    const lower = data[y + 1] ?? [];
    const signs = upper.map((dark, x) => ((lower[x] ?? false) ? (dark ? '█' : '▄') : dark ? '▀' : ' '));
    lines.push(`\u001b[30;107m${signs.join('')}\u001b[0m`);
  }
  return lines;
}
