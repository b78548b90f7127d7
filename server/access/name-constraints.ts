import { isIPv4 } from 'node:net';

/** OID of the extension, RFC 5280, section 4.2.1.10. */
export const NAME_CONSTRAINTS = '2.5.29.30';

/** Addresses that no machine on the internet has: RFC 1918, RFC 3927, loopback; as address and mask. */
const PRIVATE_IPV4 = [
  [10, 0, 0, 0, 255, 0, 0, 0],
  [172, 16, 0, 0, 255, 240, 0, 0],
  [192, 168, 0, 0, 255, 255, 0, 0],
  [169, 254, 0, 0, 255, 255, 0, 0],
  [127, 0, 0, 0, 255, 0, 0, 0],
];
/** Names that only a building's own network gives. */
const PRIVATE_NAMES = ['local', 'localhost'];

export function isPrivate(host: string): boolean {
  if (!isIPv4(host)) return PRIVATE_NAMES.some((name) => host === name || host.endsWith(`.${name}`));
  const bytes = host.split('.').map(Number);
  return PRIVATE_IPV4.some((block) => bytes.every((byte, index) => (byte & block[index + 4]!) === block[index]));
}

/** Bounds an authority to private addresses and names, and to the others given: a phone that trusts it trusts it for nothing else. */
export function nameConstraints(others: readonly string[]): Uint8Array<ArrayBuffer> {
  const addresses = [...PRIVATE_IPV4, ...others.filter(isIPv4).map((host) => [...host.split('.').map(Number), 255, 255, 255, 255])];
  const names = [...PRIVATE_NAMES, ...others.filter((host) => !isIPv4(host))];
  const subtrees = [...names.map((name) => tagged(0x82, [...Buffer.from(name, 'ascii')])), ...addresses.map((block) => tagged(0x87, block))];
  return Uint8Array.from(tagged(0x30, tagged(0xa0, subtrees.flatMap((name) => tagged(0x30, name)))));
}

/** One value in DER, RFC 5280's encoding: tag, length, content. */
function tagged(tag: number, content: readonly number[]): number[] {
  const { length } = content;
  const size = length < 0x80 ? [length] : length < 0x100 ? [0x81, length] : [0x82, length >> 8, length & 0xff];
  return [tag, ...size, ...content];
}
