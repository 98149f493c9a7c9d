import { describe, expect, it } from 'vitest';
import { fromWhere } from './from-where.js';

describe('a limit by address', () => {
  it.each([
    ['192.0.2.7', '192.0.2.7'],
    ['::ffff:192.0.2.7', '192.0.2.7'],
    ['::1', '0:0:0:0::/64'],
    ['2001:db8:1:2:3:4:5:6', '2001:db8:1:2::/64'],
    ['2001:0DB8:0001:0002::', '2001:db8:1:2::/64'],
    ['2001:db8::1', '2001:db8:0:0::/64'],
    ['fe80::1:2:3:4%eth0', 'fe80:0:0:0::/64'],
  ])('counts %s for %s', (address, whom) => expect(fromWhere(address)).toBe(whom));

  it('is not escaped by taking another number of the same 64 bits, and counts no neighbour', () => {
    const numbers = ['2001:db8:1:2::1', '2001:db8:1:2:ffff:ffff:ffff:ffff', '2001:db8:1:2:0:1:0:1'];
    expect(new Set(numbers.map(fromWhere)).size).toBe(1);
    expect(fromWhere('2001:db8:1:3::1')).not.toBe(fromWhere('2001:db8:1:2::1'));
  });
});
