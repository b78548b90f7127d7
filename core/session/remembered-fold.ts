import type { ThrowEntry, Thrown } from './ledger.ts';

/** Where a fold was led by a run. */
interface Led<State> {
  readonly run: readonly ThrowEntry[];
  readonly from: State;
  readonly to: State;
}

/**
 * A fold over throws from the first to the last, nothing else; but where it went through a run before, from the very same state,
 * it remembers where that led, and where a run has only grown it goes on from there. So one throw more costs a step, and one that
 * changed costs its run and the runs after it.
 * @param step must not change the state that it is given
 */
export function rememberedFold<State extends object>(step: (state: State, entry: ThrowEntry) => State): (thrown: Thrown, start: State) => State {
  const byRun = new WeakMap<readonly ThrowEntry[], Led<State>>();
  /** The run that was last folded with this first throw: the same with more throws begins with it. Nothing but its throws holds it, because a start outlives them. */
  const byFirst = new WeakMap<ThrowEntry, Led<State>>();

  function through(run: readonly ThrowEntry[], from: State): State {
    const known = byRun.get(run);
    if (known?.from === from) return known.to;
    const [first] = run;
    if (first === undefined) return from;
    const shorter = byFirst.get(first);
    let to = from;
    let next = 0;
    if (shorter?.from === from && beginsWith(run, shorter.run)) [to, next] = [shorter.to, shorter.run.length];
    for (; next < run.length; next += 1) to = step(to, run[next]!);
    const led = { run, from, to };
    byRun.set(run, led);
    byFirst.set(first, led);
    return to;
  }

  return (thrown, start) => {
    let state = start;
    for (const run of thrown) state = through(run, state);
    return state;
  };
}

function beginsWith(run: readonly ThrowEntry[], shorter: readonly ThrowEntry[]): boolean {
  return shorter.length <= run.length && shorter.every((entry, index) => entry === run[index]);
}
