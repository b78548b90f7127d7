/** Where groups of writes go. */
export interface GroupStore<Write, Written> {
  /** Writes a group in one transaction; throws when nothing of it was written. */
  commit(writes: readonly Write[]): readonly Written[];
  /** Resolves once all that was committed before is on the disk for good; rejects where nobody knows whether it is. */
  flush(): Promise<void>;
  /** The same at once, while everything waits. */
  flushNow(): void;
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

/** What was written, or why it was not; it is answered in its turn all the same. */
interface Committed<Written, Reply> {
  readonly result: { readonly written: Written } | { readonly error: unknown };
  readonly resolve: (reply: Reply) => void;
}

/**
 * Lets writes that arrive together share one commit and one flush of the disk, because a flush costs the same however much is in
 * it. What arrives while one is under way waits for the next; a write is answered once it is flushed, in the order of arrival.
 * The next group is written, and its flush begun, before the last one is answered: so the disk works while its answers are given.
 * A group that fails is tried write by write, so that one bad write does not take others with it.
 */
export class GroupCommit<Write, Written, Reply> {
  #waiting: Waiting<Write, Reply>[] = [];
  #committed: Committed<Written, Reply>[] = [];
  #scheduled: NodeJS.Immediate | null = null;
  #isFlushing = false;
  readonly #store: GroupStore<Write, Written>;
  readonly #outcomes: Outcomes<Written, Reply>;

  constructor(store: GroupStore<Write, Written>, outcomes: Outcomes<Written, Reply>) {
    this.#store = store;
    this.#outcomes = outcomes;
  }

  /** Whether something waits for its commit. */
  get isBusy(): boolean {
    return this.#waiting.length > 0;
  }

  /** Never rejects: a failure is a reply. */
  add(write: Write): Promise<Reply> {
    return new Promise((resolve) => {
      this.#waiting.push({ write, resolve });
      this.#schedule();
    });
  }

  /** Writes and flushes at once what waits or is under way. */
  flush(): void {
    this.#commit();
    if (this.#committed.length > 0) this.#settle(this.#committed.splice(0), () => this.#store.flushNow());
  }

  #schedule(): void {
    if (this.#isFlushing || this.#waiting.length === 0) return;
    this.#scheduled ??= setImmediate(() => this.#commitAndFlush());
  }

  #commitAndFlush(): void {
    this.#commit();
    if (this.#committed.length > 0) void this.#flushBehind();
  }

  async #flushBehind(): Promise<void> {
    this.#isFlushing = true;
    const failure = await this.#store.flush().then(() => null, (error: unknown) => ({ error }));
    this.#isFlushing = false;
    const flushed = this.#committed.splice(0);
    this.#commitAndFlush();
    this.#settle(flushed, () => {
      if (failure !== null) throw failure.error;
    });
  }

  #settle(group: readonly Committed<Written, Reply>[], demandFlushed: () => void): void {
    try {
      demandFlushed();
    } catch (error) {
      for (const { resolve } of group) resolve(this.#outcomes.failed(error));
      return;
    }
    for (const { result, resolve } of group) resolve('error' in result ? this.#outcomes.failed(result.error) : this.#outcomes.lasts(result.written));
  }

  #commit(): void {
    if (this.#scheduled !== null) clearImmediate(this.#scheduled);
    this.#scheduled = null;
    const group = this.#waiting;
    this.#waiting = [];
    if (group.length > 0) this.#commitGroup(group);
  }

  #commitGroup(group: readonly Waiting<Write, Reply>[]): void {
    try {
      const written = this.#store.commit(group.map(({ write }) => write));
      for (const [index, { resolve }] of group.entries()) this.#committed.push({ result: { written: written[index]! }, resolve });
    } catch (error) {
      if (group.length === 1) this.#committed.push({ result: { error }, resolve: group[0]!.resolve });
      else for (const one of group) this.#commitGroup([one]);
    }
  }
}
