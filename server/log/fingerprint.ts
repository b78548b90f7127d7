import { createHash } from 'node:crypto';
import type { DeviceSays } from '../../core/facts/fact.ts';

/**
 * What tells a repeated frame from another frame under the same number: the whole durable frame but its number, in
 * canonical JSON, with the units that give its numbers a meaning.
 * The device's time belongs to it: a device with coarse numbers can measure two throws alike, and one of them would be
 * lost without a word. So a device must send a kept frame again as it was, with the time it had.
 */
export function contentOf(said: DeviceSays): string {
  const { source, ...durable } = said;
  return canonical({ ...durable, time: source.time, units: source.units });
}

/** SHA-256 of a plain JSON value, whatever the order of its keys. */
export function fingerprint(value: unknown): string {
  return createHash('sha256').update(canonical(value)).digest('hex');
}

function canonical(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const members = Object.entries(value).filter(([, member]) => member !== undefined).sort(([a], [b]) => (a < b ? -1 : 1));
  return `{${members.map(([key, member]) => `${JSON.stringify(key)}:${canonical(member)}`).join(',')}}`;
}
