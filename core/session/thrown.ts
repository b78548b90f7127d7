interface Placed {
  readonly place: number;
}

/**
 * Throws of one owner in the order of the log, in runs. A throw that comes, or changes, makes one run anew and leaves the others
 * as they were, so that what was worked out over them holds on.
 */
export type InRuns<T extends Placed> = readonly (readonly T[])[];

/** Short enough to work out anew at every throw, long enough for ten thousand throws to be few runs. */
const RUN = 32;

/** Throws already in the order of the log. */
export function inRuns<T extends Placed>(entries: readonly T[]): InRuns<T> {
  return Array.from({ length: Math.ceil(entries.length / RUN) }, (_, index) => entries.slice(index * RUN, (index + 1) * RUN));
}

export function countOf<T extends Placed>(thrown: InRuns<T>): number {
  let count = 0;
  for (const run of thrown) count += run.length;
  return count;
}

/**
 * What was made of the newest so many throws, oldest first.
 * @param madeOf of each throw of a run, whose first has this number
 */
export function newestOf<T extends Placed, Made>(thrown: InRuns<T>, most: number, madeOf: (run: readonly T[], number: number) => readonly Made[]): Made[] {
  let [first, before] = [thrown.length, countOf(thrown)];
  let skip = Math.max(0, before - most);
  for (; first > 0 && before > skip; first -= 1) before -= thrown[first - 1]!.length;
  skip = Math.max(0, skip - before);
  const newest: Made[] = [];
  for (const run of thrown.slice(first)) {
    const made = madeOf(run, before + 1);
    for (let index = skip; index < made.length; index += 1) newest.push(made[index]!);
    before += run.length;
    skip = 0;
  }
  return newest;
}

/** How many came after a place. */
export function countAfter<T extends Placed>(thrown: InRuns<T>, place: number): number {
  let count = 0;
  for (let index = thrown.length - 1; index >= 0; index -= 1) {
    const run = thrown[index]!;
    const after = run[0]!.place > place ? run.length : run.filter((entry) => entry.place > place).length;
    count += after;
    if (after < run.length) break;
  }
  return count;
}

export function throwAt<T extends Placed>(thrown: InRuns<T>, place: number): T | undefined {
  return thrown[runOf(thrown, place)]?.find((entry) => entry.place === place);
}

/** With a throw that is new here, or in place of the one that stood there. */
export function withThrow<T extends Placed>(thrown: InRuns<T>, entry: T): InRuns<T> {
  const last = thrown.at(-1);
  if (last === undefined || entry.place > last.at(-1)!.place) {
    return last === undefined || last.length >= RUN ? [...thrown, [entry]] : [...thrown.slice(0, -1), [...last, entry]];
  }
  const index = Math.max(0, runOf(thrown, entry.place));
  const before = thrown[index]!.filter(({ place }) => place < entry.place);
  const after = thrown[index]!.filter(({ place }) => place > entry.place);
  return thrown.toSpliced(index, 1, ...inRuns([...before, entry, ...after]));
}

export function withoutThrow<T extends Placed>(thrown: InRuns<T>, place: number): InRuns<T> {
  const index = runOf(thrown, place);
  const left = thrown[index]?.filter((entry) => entry.place !== place) ?? [];
  return index === -1 ? thrown : thrown.toSpliced(index, 1, ...(left.length === 0 ? [] : [left]));
}

/** The last run that begins at a place or before it; −1 without one. */
function runOf<T extends Placed>(thrown: InRuns<T>, place: number): number {
  let [low, high] = [0, thrown.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (thrown[middle]![0]!.place <= place) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}
