import type { Fact, Said } from '../../core/facts/fact.ts';
import type { ErasedFacts } from './erase.ts';

/** What somebody wants to have written down. */
export interface Entry {
  readonly mound: string;
  /** `device:<id>`, `coach:<name>`, `athlete` or `server`. */
  readonly by: string;
  readonly said: Said;
  /** The coach's request id: the same request is stored once. */
  readonly request?: string;
}

/** A device's number: (device, run, sequence) names a throw or a correction for ever. */
export interface Identity {
  readonly device: string;
  readonly run: string;
  readonly sequence: number;
}

export interface StorageFailure {
  readonly kind: 'failed';
  readonly sentence: string;
}

/** `stored` is answered only once the fact is on disk; `again` tells that it already was. */
export type AppendReply =
  | { readonly kind: 'stored'; readonly mound: string; readonly place: number; readonly again: boolean }
  | { readonly kind: 'conflict'; readonly code: ConflictCode; readonly path: string; readonly sentence: string; readonly final: boolean }
  | StorageFailure;

/** What the log itself cannot accept, because of what it already holds. */
export type ConflictCode = 'body-differs' | 'refused-before' | 'nothing-to-correct' | 'request-differs';

/** A refusal, kept so that somebody can find out later what a device tried to say. */
export interface RefusalEntry {
  readonly mound: string | null;
  readonly device: string | null;
  readonly run: string | null;
  readonly sequence: number | null;
  readonly code: string;
  readonly path: string;
  readonly sentence: string;
  /** The refused number shall count as settled. Needs device, run and sequence. */
  readonly settles: boolean;
  /** The frame as it came, where it is worth keeping. */
  readonly frame: string | null;
}

export type RefuseReply = { readonly kind: 'kept' } | StorageFailure;

/** Which numbers of one device run are stored or finally refused. */
export interface Settled {
  /** Every number up to this one. */
  readonly through: number;
  /** Ranges, both ends included, above `through` and below the highest number seen, that are not. */
  readonly gaps: readonly (readonly [number, number])[];
}

/** Where a fact stands that can no longer be read. */
export interface DamagedFact {
  readonly mound: string;
  readonly place: number;
}

export type EraseReply =
  | ({ readonly kind: 'erased'; /** Whether the file is rid of it too; if not, the next start or erasure sweeps it. */ readonly swept: boolean } & ErasedFacts)
  | { readonly kind: 'unknown' }
  | StorageFailure;

/** Of many entries at once: all of them, or none. */
export type AppendAllReply = { readonly kind: 'stored'; readonly facts: number } | { readonly kind: 'known' } | StorageFailure;

type Whereabouts = { readonly kind: 'stored'; readonly mound: string; readonly place: number } | { readonly kind: 'refused' };

/**
 * The append-only log of facts, one order per mound. Nothing in it is ever changed or removed, but for athletes who are erased.
 *
 * A correction goes to the log of the throw that it corrects, wherever its device stands now.
 * After `close` every append answers `failed`.
 */
export interface FactLog {
  /** Names this log among all logs: places of another log mean nothing here. Another one once somebody is erased, because what screens hold of it no longer stands. */
  readonly id: string;
  append(entry: Entry): Promise<AppendReply>;
  /**
   * Writes all of them at once, in one transaction, or none: `known` where one of them is stored already, or cannot be because of
   * what is. Nobody else is written for meanwhile.
   */
  appendAll(entries: Iterable<Entry>): AppendAllReply;
  refuse(refusal: RefusalEntry): Promise<RefuseReply>;
  /** Whether so much is on its way to the disk that everything else has to wait. */
  isCrowded(): boolean;
  /** Whether nothing is on its way to the disk. */
  isQuiet(): boolean;
  /** Facts of a mound behind a place, 0 for all, and up to another one, in order, without damaged ones. */
  read(mound: string, afterPlace: number, throughPlace?: number): Iterable<Fact>;
  mounds(): string[];
  /** Place of the newest fact of a mound, damaged or not; 0 without one. */
  newest(mound: string): number;
  settled(device: string, run: string): Settled;
  /** What became of a number; null when it never came to an end. */
  find(identity: Identity): Whereabouts | null;
  /** Whether a coach's request is already stored. */
  knowsRequest(request: string): boolean;
  /** The fact that a request was stored as; null where none was, or where it can no longer be read. */
  requested(request: string): Fact | null;
  /** Facts that were met on reading and are not what was written: kept as they are, and passed over. */
  damaged(): DamagedFact[];
  /** How many refusals of each code are kept. */
  refusals(): Record<string, number>;
  /** Calls with every fact once it is on disk, in the order of the log. Returns what ends it. */
  onAppended(listener: (fact: Fact) => void): () => void;
  /**
   * Calls with a fact that is on its way to the disk, by itself. It may never come to be, so nothing of it may be shown; but what
   * takes time to work out can be worked out while the disk works. Returns what ends it.
   */
  onUnderWay(listener: (fact: Fact) => void): () => void;
  /** Puts out everything about an athlete, for good: all of it or, when it fails, nothing. `by` signs what stands in its place. */
  erase(athlete: string, by: string): EraseReply;
  /** Calls once an athlete is erased: what was read before of these mounds no longer stands. Returns what ends it. */
  onErased(listener: (mounds: readonly string[]) => void): () => void;
  /** Writes what is waiting, then lets go of the file. */
  close(): void;
}
