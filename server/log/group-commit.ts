/** What became of a group. */
export type GroupEnd<Written> =
  /** It is on the disk for good. */
  | { readonly kind: 'lasts'; readonly written: readonly Written[] }
  /**
   * Nothing of it was written: by a fault of its own, or because the group before it was not. What is `not-known` may be there all
   * the same.
   */
  | { readonly kind: 'failed'; readonly error: unknown; readonly why: 'itself' | 'behind-another' | 'not-known' };

/** Where groups of writes go, one behind the other. */
export interface GroupStore<Write, Written> {
  /** Writes a group in one transaction and makes it last, one write alone where nothing else waits or is under way; tells its end, once, behind that of every group before it. */
  write(writes: readonly Write[], isAlone: boolean, ended: (end: GroupEnd<Written>) => void): void;
  /** Waits, and everything with it, for a group that is under way: its end has been told when this returns. */
  wait(): void;
  /** Every group has ended, and the last ones have failed: what was thought to be written with them is not. */
  forget(): void;
}

/** What becomes of a write. */
export interface Outcomes<Written, Reply> {
  /** It is on the disk for good. */
  lasts(written: Written): Reply;
  failed(error: unknown): Reply;
}

interface Waiting<Write, Reply> {
  readonly write: Write;
  readonly resolve: (reply: Reply) => void;
}

/** Groups that are under way: while the disk works on one, the next ones lie ready for it. */
const AT_ONCE = 4;
/** So many do not wait for more: in one crowd that is answered together the disk would rest while it is read, and it while the disk works. */
const CROWD = 96;
/** Ten thousand throws a second leave fewer than this on their way, a program that can do no more always leaves more. */
const MANY = 160;

/**
 * Lets writes that arrive together share one commit and one flush of the disk, because a flush costs the same however much is in
 * it. A write is answered once it lasts, in the order of arrival; the next group is under way before the last one is answered.
 * A group that fails is tried write by write, so that one bad write does not take others with it.
 */
export class GroupCommit<Write, Written, Reply> {
  #waiting: Waiting<Write, Reply>[] = [];
  /** Of groups that failed: each goes by itself, ahead of what waits. */
  #alone: Waiting<Write, Reply>[] = [];
  #scheduled: NodeJS.Immediate | null = null;
  #underWay = 0;
  #writesUnderWay = 0;
  #hasFailed = false;
  readonly #store: GroupStore<Write, Written>;
  readonly #outcomes: Outcomes<Written, Reply>;

  constructor(store: GroupStore<Write, Written>, outcomes: Outcomes<Written, Reply>) {
    this.#store = store;
    this.#outcomes = outcomes;
  }

  /** Whether so much waits or is under way that what is less urgent shall rest. */
  get isCrowded(): boolean {
    return this.#waiting.length + this.#writesUnderWay > MANY;
  }

  /** Whether nothing waits or is under way. */
  get isQuiet(): boolean {
    return this.#waiting.length + this.#alone.length + this.#underWay === 0;
  }

  /** Never rejects: a failure is a reply. */
  add(write: Write): Promise<Reply> {
    return new Promise((resolve) => {
      this.#waiting.push({ write, resolve });
      if (this.#underWay === AT_ONCE) return;
      if (this.#waiting.length >= CROWD) this.#begin();
      else this.#scheduled ??= setImmediate(() => this.#begin());
    });
  }

  /** Brings to its end, at once, what waits or is under way. */
  flush(): void {
    while (this.#underWay > 0 || this.#alone.length > 0 || this.#waiting.length > 0) {
      this.#begin();
      if (this.#underWay > 0) this.#store.wait();
    }
  }

  #begin(): void {
    if (this.#scheduled !== null) clearImmediate(this.#scheduled);
    this.#scheduled = null;
    // Behind a group that failed, what was thought to be written is first to be forgotten.
    if (this.#hasFailed || this.#underWay >= (this.#alone.length > 0 ? 1 : AT_ONCE)) return;
    const group = this.#alone.length > 0 ? this.#alone.splice(0, 1) : this.#waiting.splice(0);
    if (group.length === 0) return;
    const isAlone = this.#underWay === 0 && group.length === 1;
    this.#underWay += 1;
    this.#writesUnderWay += group.length;
    this.#store.write(group.map(({ write }) => write), isAlone, (end) => this.#ended(group, end));
  }

  #ended(group: readonly Waiting<Write, Reply>[], end: GroupEnd<Written>): void {
    this.#underWay -= 1;
    this.#writesUnderWay -= group.length;
    const again = end.kind === 'failed' && (end.why === 'behind-another' || (end.why === 'itself' && group.length > 1));
    if (again) this.#alone.push(...group);
    if (end.kind === 'failed') this.#hasFailed = true;
    if (this.#hasFailed && this.#underWay === 0) {
      this.#hasFailed = false;
      this.#store.forget();
    }
    this.#begin();
    if (again) return;
    for (const [index, { resolve }] of group.entries()) resolve(end.kind === 'lasts' ? this.#outcomes.lasts(end.written[index]!) : this.#outcomes.failed(end.error));
  }
}
