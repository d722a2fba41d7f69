// The addresses at which other machines of the farm reach this one, the likeliest first.
import { networkInterfaces, type NetworkInterfaceInfo } from 'node:os';

/** One address of this machine. */
export interface OwnAddress {
  readonly address: string;
  /** The system's name for the network, for instance `wlan0`. */
  readonly network: string;
}

type Interfaces = Readonly<Record<string, readonly NetworkInterfaceInfo[] | undefined>>;

// Networks that live inside this machine, and tunnels: a phone in the barn is on none of them.
const WITHIN =
  /^(docker|br-|veth|virbr|vmnet|vboxnet|lxc|lxd|cni|flannel|podman|tun|tap|wg|utun|tailscale|zt)/i;

/**
 * All IPv4 addresses but the loopback, ordered: private ones (RFC 1918) on a network of its own, then private ones of
 * networks within the machine and tunnels, then others, last those that a machine gave itself for want of a router (RFC 3927).
 */
export function ownAddresses(interfaces: Interfaces = networkInterfaces()): OwnAddress[] {
  const all = Object.entries(interfaces).flatMap(([network, addresses = []]) =>
    addresses
      .filter(({ family, internal }) => family === 'IPv4' && !internal)
      .map(({ address }) => ({ address, network, place: placeOf(address, network) })),
  );
  return all.sort((a, b) => a.place - b.place).map(({ address, network }) => ({ address, network }));
}

function placeOf(address: string, network: string): number {
  if (address.startsWith('169.254.')) return 4;
  if (!isPrivate(address)) return 3;
  if (WITHIN.test(network)) return 2;
  return address.startsWith('192.168.') ? 0 : 1;
}

const isPrivate = (address: string) =>
  address.startsWith('10.') || address.startsWith('192.168.') || /^172\.(1[6-9]|2\d|3[01])\./.test(address);
