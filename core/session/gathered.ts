/**
 * What only ever grows at its end, oldest first, in runs. Each session keeps what was known when it opened: in runs it shares all
 * but the last with the sessions before it, where whole lists would fill the memory with years of the same.
 */
export type Gathered<One> = readonly (readonly One[])[];

/** Short enough for a last run of its own in each session, long enough for years to be few runs. */
const RUN = 16;

export function gathered<One>(all: readonly One[]): Gathered<One> {
  return withMore([], all);
}

export function withMore<One>(before: Gathered<One>, more: readonly One[]): Gathered<One> {
  if (more.length === 0) return before;
  const last = before.at(-1);
  const grows = last !== undefined && last.length < RUN;
  const behind = grows ? [...last, ...more] : more;
  return [...(grows ? before.slice(0, -1) : before), ...Array.from({ length: Math.ceil(behind.length / RUN) }, (_, index) => behind.slice(index * RUN, (index + 1) * RUN))];
}
