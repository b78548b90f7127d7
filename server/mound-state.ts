import { deserialize, serialize } from 'node:v8';
import type { Fact } from '../core/facts/fact.ts';
import { foldOrPass } from '../core/session/fold-or-pass.ts';
import { emptyLedger, type Ledger, type Shelf, type Thrown } from '../core/session/ledger.ts';
import { closedAtHand, putAway } from '../core/session/put-away.ts';
import type { SessionSlice } from '../core/session/recorded.ts';
import { prepareView } from '../core/session/view.ts';
import type { Brought } from './brought.ts';
import type { FactLog } from './log/fact-log.ts';
import type { ShelfFile } from './log/shelf.ts';
import { MoundPast, type PastKept } from './mound-past.ts';
import { packed, unpacked } from './pack.ts';

/** Facts after which a mound's state is kept again: so many are folded anew after a crash. */
const KEEP_EVERY = 4096;
/** A start keeps what it found when it had so many to fold. */
const KEPT_WHEN_STARTING = 1024;

export interface MoundParts {
  readonly log: FactLog;
  readonly file: ShelfFile;
  readonly brought: Brought;
  /** The throws of a session when a pack is lost: the mound is folded anew. */
  lost(session: string): Thrown;
  onTrouble(error: unknown): void;
}

interface Kept {
  readonly ledger: Ledger;
  readonly past: PastKept;
  /** The fact at the ledger's place, as it was: where the log has another one, this is the state of another log. */
  readonly newest: string;
}

/** The present state of one mound, what it takes to cut recordings out of its log, and what is kept of both between two starts. */
export class MoundState {
  readonly #parts: MoundParts;
  readonly #mound: string;
  readonly #shelf: Shelf;
  #ledger: Ledger;
  #past: MoundPast;
  /** What the ledger becomes if a fact comes to be that is on its way. */
  #next: { readonly before: Ledger; readonly fact: Fact; readonly after: Ledger } | null = null;
  /** Place of the state that is kept. */
  #keptPlace = 0;

  /** As it was kept, where that can be believed, or from nothing. */
  constructor(mound: string, parts: MoundParts, from: 'kept' | 'nothing') {
    this.#mound = mound;
    this.#parts = parts;
    this.#shelf = { bring: (session, pack) => this.#bring(session, pack) };
    const kept = from === 'kept' ? this.#read() : null;
    this.#ledger = kept === null ? emptyLedger(mound) : this.#withShelf(kept.ledger);
    this.#past = this.#pastOf(kept?.past);
    this.#keptPlace = this.#ledger.place;
  }

  get ledger(): Ledger {
    return this.#ledger;
  }

  /** Takes what the log has behind its place, up to another one or to the end. */
  read(through?: number): void {
    for (const fact of this.#parts.log.read(this.#mound, this.#ledger.place, through)) this.#fold(fact);
  }

  /** Keeps what took many facts to find. */
  keepFound(): void {
    if (this.#ledger.place - this.#keptPlace >= KEPT_WHEN_STARTING) this.keep();
  }

  /** Works out ahead what a throw changes that is on its way, and may never come to be. */
  expect(fact: Fact): void {
    const before = this.#ledger;
    if (fact.place !== before.place + 1 || fact.said.kind !== 'throw-measured') return;
    const after = this.#folded(before, fact);
    this.#next = { before, fact, after };
    prepareView(after);
  }

  /** The ledger as it will be if the fact that was expected comes to be; null where none is on its way. */
  get coming(): Ledger | null {
    return this.#next?.before === this.#ledger ? this.#next.after : null;
  }

  /** A fact that cannot be folded is reported and passed over: the log still has it. */
  take(fact: Fact): void {
    this.#fold(fact);
    if (fact.said.kind === 'session-closed' && fact.place - this.#keptPlace >= KEEP_EVERY) this.keep();
  }

  #fold(fact: Fact): void {
    if (fact.said.kind === 'session-opened' || fact.said.kind === 'session-imported') this.#tidy();
    const before = this.#ledger;
    const next = this.#next;
    this.#next = null;
    this.#ledger = next?.before === before && next.fact === fact ? next.after : this.#folded(before, fact);
    this.#past.take(fact, before, this.#ledger);
    if (fact.said.kind === 'session-closed') this.#tidy();
  }

  recorded(session: string): SessionSlice {
    return this.#past.slice(session, this.#ledger);
  }

  /** Keeps what it takes to start from here. A disk that does not take it costs the next start some time, and nothing else. */
  keep(): void {
    const { file, log, onTrouble } = this.#parts;
    if (this.#ledger.place === this.#keptPlace) return;
    this.#tidy();
    const { place } = this.#ledger;
    const [newest] = log.read(this.#mound, place - 1, place);
    if (newest === undefined) return;
    const { bases, ...past } = this.#past.kept;
    const kept: Kept = { newest: JSON.stringify(newest), ledger: { ...this.#ledger, shelf: null }, past: { ...past, bases: bases.map((base) => ({ ...base, shelf: null })) } };
    try {
      file.keepState(this.#mound, serialize(kept));
      this.#keptPlace = place;
    } catch (error) {
      onTrouble(error);
    }
  }

  #read(): Kept | null {
    const { file, log, onTrouble } = this.#parts;
    try {
      const bytes = file.state(this.#mound);
      if (bytes === null) return null;
      const kept = deserialize(bytes) as Kept;
      const { place } = kept.ledger;
      const [newest] = log.read(this.#mound, place - 1, place);
      if (newest === undefined || JSON.stringify(newest) !== kept.newest) return null;
      file.dropPacks(this.#mound, packsIn(kept));
      return kept;
    } catch (error) {
      onTrouble(error);
      return null;
    }
  }

  #withShelf(ledger: Ledger): Ledger {
    return { ...ledger, shelf: this.#shelf };
  }

  #pastOf(kept?: PastKept): MoundPast {
    const reading = { read: (after: number, through: number) => this.#parts.log.read(this.#mound, after, through), fold: (ledger: Ledger, fact: Fact) => this.#folded(ledger, fact) };
    return new MoundPast(this.#mound, reading, kept && { ...kept, bases: kept.bases.map((base) => this.#withShelf(base)) });
  }

  #folded(ledger: Ledger, fact: Fact): Ledger {
    return foldOrPass(ledger, fact, this.#parts.onTrouble);
  }

  /** Puts away what is closed; what the disk does not take stays at hand. */
  #tidy(): void {
    const { file, brought, onTrouble } = this.#parts;
    for (const session of closedAtHand(this.#ledger)) {
      const thrown = this.#ledger.throws[session]!;
      try {
        const pack = file.keepPack(this.#mound, packed(thrown));
        brought.add(pack, thrown);
        this.#ledger = putAway(this.#ledger, session, pack, this.#shelf);
      } catch (error) {
        onTrouble(error);
      }
    }
  }

  #bring(session: string, pack: number): Thrown {
    const { brought } = this.#parts;
    const found = brought.get(pack) ?? this.#unpacked(session, pack);
    if (found === null) return this.#parts.lost(session);
    brought.add(pack, found);
    return found;
  }

  #unpacked(session: string, pack: number): Thrown | null {
    const { file, log, onTrouble } = this.#parts;
    try {
      const bytes = file.pack(pack);
      return bytes && unpacked(bytes, session, (after, through) => log.read(this.#mound, after, through));
    } catch (error) {
      onTrouble(error);
      return null;
    }
  }
}

function packsIn({ ledger, past }: Kept): Set<number> {
  return new Set([ledger, ...past.bases].flatMap(({ away }) => Object.values(away).map(({ pack }) => pack)));
}
