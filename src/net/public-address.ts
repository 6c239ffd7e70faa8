import { BlockList, isIP } from 'node:net';

/**
 * Addresses that are not on the public internet: IANA's special-purpose registries (RFC 6890 and its updates), with
 * multicast, and every form of IPv6 that carries an IPv4 address inside.
 */
const IPV4 = [
  '0.0.0.0/8',
  '10.0.0.0/8',
  '100.64.0.0/10',
  '127.0.0.0/8',
  '169.254.0.0/16',
  '172.16.0.0/12',
  '192.0.0.0/24',
  '192.0.2.0/24',
  '192.88.99.0/24',
  '192.168.0.0/16',
  '198.18.0.0/15',
  '198.51.100.0/24',
  '203.0.113.0/24',
  '224.0.0.0/4',
  '240.0.0.0/4',
];
const IPV6 = [
  '::/96',
  '::ffff:0:0/96',
  '64:ff9b::/96',
  '64:ff9b:1::/48',
  '100::/64',
  '2001::/23',
  '2001:db8::/32',
  '2002::/16',
  '3fff::/20',
  'fc00::/7',
  'fe80::/10',
  'fec0::/10',
  'ff00::/8',
];

/** Two lists: in one, the rule for IPv4 inside IPv6 would match every IPv4 address. */
const special = { ipv4: listOf(IPV4, 'ipv4'), ipv6: listOf(IPV6, 'ipv6') };

function listOf(ranges: readonly string[], family: 'ipv4' | 'ipv6'): BlockList {
  const list = new BlockList();
  for (const range of ranges) {
    const [network = '', bits] = range.split('/');
    list.addSubnet(network, Number(bits), family);
  }
  return list;
}

/**
 * Whether an IP address is one of the public internet; anything that is no address is not.
 * @example isPublicAddress('10.0.0.1') // false
 */
export function isPublicAddress(address: string): boolean {
  const plain = address.replace(/^\[|\]$/g, '');
  const family = isIP(plain);
  if (family === 0 || plain.includes('%')) return false;
  const name = family === 4 ? 'ipv4' : 'ipv6';
  return !special[name].check(plain, name);
}
