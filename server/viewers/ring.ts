import type { MoundView } from '../../core/facts/views.ts';

/** The last views of one mound, by place. */
export class Ring {
  #views: MoundView[] = [];
  readonly #size: number;

  constructor(size: number) {
    this.#size = size;
  }

  get newest(): MoundView | null {
    return this.#views.at(-1) ?? null;
  }

  /** Adds a view, or replaces the newest when it stands at the same place. */
  add(view: MoundView): void {
    if (this.newest?.place === view.place) this.#views.pop();
    this.#views.push(view);
    if (this.#views.length > this.#size) this.#views.shift();
  }

  at(place: number): MoundView | null {
    return this.#views.findLast((view) => view.place === place) ?? null;
  }
}
