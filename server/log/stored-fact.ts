import { crc32 } from 'node:zlib';
import type { Fact, Said } from '../../core/facts/fact.ts';

export interface FactRow {
  readonly mound: string;
  readonly place: number;
  readonly at_ms: number;
  readonly said_by: string;
  readonly version: number;
  readonly said: string;
  /** Null where an upgrade found something that no door lets in. */
  readonly checksum: number | null;
}

export const FACT_COLUMNS = 'mound, place, at_ms, said_by, version, said, checksum';

/** A fact as it was written; null when it is not what was written, or never was a fact. */
export function storedFact(row: FactRow): Fact | null {
  const { mound, place, at_ms: atMs, said_by: by, version, said, checksum } = row;
  if (checksum !== checksumOf(row)) return null;
  return { mound, place, atMs, by, version, said: JSON.parse(said) as Said };
}

/**
 * CRC-32 of all that a fact says and of where it stands, kept beside it: what agrees with it is what was checked at the door,
 * so reading needs no second check. It tells damage, not malice.
 */
export function checksumOf({ mound, place, at_ms: atMs, said_by: by, version, said }: Omit<FactRow, 'checksum'>): number {
  return crc32(`${mound}\n${place}\n${atMs}\n${by}\n${version}\n${said}`);
}
