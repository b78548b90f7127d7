/** What is on its way into the file and may not be found there yet, group by group. */
export class Fresh<Item> {
  #groups: Item[][] = [[]];

  add(item: Item): void {
    this.#groups.at(-1)!.push(item);
  }

  find(is: (item: Item) => boolean): Item | undefined {
    for (const group of this.#groups) {
      const found = group.find(is);
      if (found !== undefined) return found;
    }
    return undefined;
  }

  /** What is added from now on belongs to another group. */
  complete(): void {
    this.#groups.push([]);
  }

  /** The oldest group is in the file. */
  stand(): void {
    this.#groups.shift();
  }

  forget(): void {
    this.#groups = [[]];
  }
}
