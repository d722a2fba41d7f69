// The way in for other phones: which address, and a code that holds it.
import { describe, expect, it } from 'vitest';
import { invitationOf, terminalCode } from '../../../../src/desk/access/invitation.ts';
import { ownAddresses } from '../../../../src/desk/access/network.ts';
import { hasQrReader, readBack, squares } from '../../../support/qrReader.ts';
import { deskOnLan } from './onLan.ts';

const address = (text: string, internal = false) => ({
  address: text,
  family: text.includes(':') ? ('IPv6' as const) : ('IPv4' as const),
  internal,
  netmask: '',
  mac: '',
  cidr: null,
  scopeid: 0,
});

describe('ownAddresses', () => {
  it('puts the barn network first and lists all', () => {
    // Which addresses are private: RFC 1918, section 3; which a machine gives itself: RFC 3927.
    const interfaces = {
      lo: [address('127.0.0.1', true), address('::1', true)],
      docker0: [address('172.17.0.1')],
      tun0: [address('10.8.0.2')],
      eth1: [address('169.254.7.7')],
      wwan0: [address('100.72.1.1')],
      eth0: [address('10.1.2.3'), address('fd00::5')],
      wlan0: [address('192.168.1.5')],
      eth2: [address('172.32.0.1')],
      eth3: [address('172.31.0.1')],
    };
    expect(ownAddresses(interfaces).map((one) => `${one.network} ${one.address}`)).toEqual([
      'wlan0 192.168.1.5',
      'eth0 10.1.2.3',
      'eth3 172.31.0.1',
      'docker0 172.17.0.1',
      'tun0 10.8.0.2',
      'wwan0 100.72.1.1',
      'eth2 172.32.0.1',
      'eth1 169.254.7.7',
    ]);
  });

  it('is empty without a network', () => {
    expect(ownAddresses({ lo: [address('127.0.0.1', true)] })).toEqual([]);
  });
});

const WORDS = ['clover', 'lantern', 'otter', 'gate', 'plum'];

describe('the invitation', () => {
  it('carries the words in the fragment, which no browser sends', () => {
    const { ways } = invitationOf(WORDS, { port: 4173, base: '/visit/' }, [{ address: '192.168.1.5', network: 'wlan0' }]); // prettier-ignore
    const url = new URL(ways[0]?.url ?? '');
    expect(url.href).toBe('http://192.168.1.5:4173/visit/book/#words=clover-lantern-otter-gate-plum');
    expect(ways[0]?.plain).toBe('http://192.168.1.5:4173/visit/book/');
    expect([url.search, url.hash]).toEqual(['', '#words=clover-lantern-otter-gate-plum']);
  });

  it('is shown to this machine and to nobody else', async () => {
    const { ask, words } = deskOnLan();
    const here = await ask('desk/invitation', { from: '127.0.0.1', at: '127.0.0.1', host: 'localhost:4173' });
    expect(await here.json()).toMatchObject({ words });
    const other = await ask('desk/invitation');
    expect(other.status).toBe(403);
    for (const word of words) expect(await other.clone().text()).not.toContain(word);
  });

  it.skipIf(!hasQrReader)(
    'draws a code that another program reads (zbarimg), on a page and in a terminal',
    () => {
      const { ways } = invitationOf(WORDS, { port: 4173, base: '/' }, [{ address: '192.168.1.5', network: 'wlan0' }]); // prettier-ignore
      const [way] = ways;
      if (!way) throw new Error('no way in');
      expect(readBack(squares(way.qr.path, way.qr.size))).toBe(way.url);
      expect(readBack(halfBlocks(terminalCode(way.url)))).toBe(way.url);
    },
  );
});

function halfBlocks(lines: readonly string[]): boolean[][] {
  return lines.flatMap((line) => {
    // Black on white: signs are dark in the half that they fill.
    const signs = [...line.replace('\u001b[30;107m', '').replace('\u001b[0m', '')];
    return [signs.map((sign) => '█▀'.includes(sign)), signs.map((sign) => '█▄'.includes(sign))];
  });
}
