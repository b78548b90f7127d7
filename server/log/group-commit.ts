/**
 * Lets writes that arrive in one turn of the event loop share one commit, because a commit costs a flush of the disk
 * however much is in it.
 * `commitAll` writes a group in one transaction and throws when nothing of it was written; a group that fails is tried
 * write by write, so that one bad write does not take others with it.
 */
export class GroupCommit<Write, Reply> {
  #waiting: { readonly write: Write; readonly resolve: (reply: Reply) => void }[] = [];
  #scheduled: NodeJS.Immediate | null = null;
  readonly #commitAll: (writes: readonly Write[]) => Reply[];
  readonly #failed: (error: unknown) => Reply;

  constructor(commitAll: (writes: readonly Write[]) => Reply[], failed: (error: unknown) => Reply) {
    this.#commitAll = commitAll;
    this.#failed = failed;
  }

  get isBusy(): boolean {
    return this.#waiting.length > 0;
  }

  /** Never rejects: a failure is a reply. */
  add(write: Write): Promise<Reply> {
    return new Promise((resolve) => {
      this.#waiting.push({ write, resolve });
      this.#scheduled ??= setImmediate(() => this.flush());
    });
  }

  flush(): void {
    if (this.#scheduled !== null) clearImmediate(this.#scheduled);
    this.#scheduled = null;
    const group = this.#waiting;
    this.#waiting = [];
    if (group.length === 0) return;
    const replies = this.#commit(group.map(({ write }) => write));
    group.forEach(({ resolve }, index) => resolve(replies[index]!));
  }

  #commit(writes: readonly Write[]): Reply[] {
    try {
      return this.#commitAll(writes);
    } catch (error) {
      return writes.length === 1 ? [this.#failed(error)] : writes.flatMap((write) => this.#commit([write]));
    }
  }
}
