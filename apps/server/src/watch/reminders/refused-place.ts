/**
 * Where the server does not send to, because somebody might use it to reach what only the server can reach: anything but
 * http and https, an address with a name and a secret in it, and machines that are not out in the open.
 *
 * A name is looked at when it is entered, and each number that it leads to again at every connection: a name may lead
 * elsewhere by then.
 */
import { BlockList, isIP } from 'node:net';

/** Loopback, this machine, private, link-local, carrier, multicast, documentation and reserved numbers (RFC 6890, 4193). */
const INSIDE: readonly [first: string, bits: number, family: 'ipv4' | 'ipv6'][] = [
  ['0.0.0.0', 8, 'ipv4'],
  ['10.0.0.0', 8, 'ipv4'],
  ['100.64.0.0', 10, 'ipv4'],
  ['127.0.0.0', 8, 'ipv4'],
  ['169.254.0.0', 16, 'ipv4'],
  ['172.16.0.0', 12, 'ipv4'],
  ['192.0.0.0', 24, 'ipv4'],
  ['192.0.2.0', 24, 'ipv4'],
  ['192.168.0.0', 16, 'ipv4'],
  ['198.18.0.0', 15, 'ipv4'],
  ['198.51.100.0', 24, 'ipv4'],
  ['203.0.113.0', 24, 'ipv4'],
  ['224.0.0.0', 3, 'ipv4'],
  ['::', 96, 'ipv6'],
  ['::ffff:0:0:0', 96, 'ipv6'],
  ['64:ff9b::', 96, 'ipv6'],
  ['64:ff9b:1::', 48, 'ipv6'],
  ['100::', 64, 'ipv6'],
  ['2001::', 23, 'ipv6'],
  ['2001:db8::', 32, 'ipv6'],
  ['2002::', 16, 'ipv6'],
  ['fc00::', 7, 'ipv6'],
  ['fe80::', 10, 'ipv6'],
  ['fec0::', 10, 'ipv6'],
  ['ff00::', 8, 'ipv6'],
];

const inside = new BlockList();
for (const [first, bits, family] of INSIDE) inside.addSubnet(first, bits, family);

/** Whether a number is that of a machine inside. IPv4 written as IPv6 counts as what it is. */
export function isInside(number: string): boolean {
  const version = isIP(number);
  return version === 0 || inside.check(number, version === 4 ? 'ipv4' : 'ipv6');
}

/** Why nothing is sent to an address, in words; null when it may be. @param mayInside the server was told to allow it */
export function refusedPlace(address: string, mayInside: boolean): string | null {
  const url = URL.canParse(address) ? new URL(address) : null;
  if (url === null) return 'is no address such as https://example.org/reminders';
  if (url.protocol !== 'https:' && url.protocol !== 'http:') return 'must begin with https:// or http://';
  if (url.username !== '' || url.password !== '') return 'must not carry a name or a secret';
  if (url.hash !== '') return 'must not carry a part after #';
  return mayInside || !leadsInside(url.hostname)
    ? null
    : 'leads to a machine inside, which this server was not told to reach';
}

function leadsInside(hostname: string): boolean {
  const host = hostname.replace(/^\[|\]$/g, '').replace(/\.$/, '');
  if (isIP(host) !== 0) return isInside(host);
  return !host.includes('.') || /\.(localhost|local|internal|home\.arpa)$/i.test(host);
}
