import { isIPv6 } from 'node:net';

/**
 * Whom a request counts for in the limits by address: an IPv4 address, or the first 64 bits of an IPv6 address, since
 * whoever has one of these has all that begin with them (RFC 6177: a site is given 64 bits or more to number itself).
 */
export function fromWhere(address: string): string {
  const plain = address.replace(/^::ffff:(?=\d+\.)/i, '').replace(/%.*$/, '');
  if (!isIPv6(plain)) return plain;
  const [head = '', tail] = plain.split('::');
  const groups = (part: string): string[] => (part === '' ? [] : part.split(':'));
  const missing = tail === undefined ? 0 : 8 - groups(head).length - groups(tail).length;
  const all = [...groups(head), ...Array.from({ length: missing }, () => '0'), ...groups(tail ?? '')];
  return `${all
    .slice(0, 4)
    .map((group) => Number.parseInt(group, 16).toString(16))
    .join(':')}::/64`;
}
