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
  /** The run that was last folded with this first throw: the same again, or with more throws. Nothing but its throws holds it, because a start outlives them. */
  const byFirst = new WeakMap<ThrowEntry, Led<State>>();

  function through(run: readonly ThrowEntry[], from: State): State {
    const first = run[0];
    if (first === undefined) return from;
    const known = byFirst.get(first);
    const isFrom = known !== undefined && known.from === from;
    if (isFrom && known.run === run) return known.to;
    const goesOn = isFrom && beginsWith(run, known.run);
    let to = goesOn ? known.to : from;
    for (let next = goesOn ? known.run.length : 0; next < run.length; next += 1) to = step(to, run[next]!);
    byFirst.set(first, { run, from, to });
    return to;
  }

  /** How these throws were last folded, by the first of them: to compare runs costs far less than to look each of them up. */
  const lastFold = new WeakMap<ThrowEntry, { readonly start: State; readonly thrown: Thrown; /** After each run. */ readonly states: State[] }>();

  return (thrown, start) => {
    const first = thrown[0]?.[0];
    if (first === undefined) return start;
    const known = lastFold.get(first);
    const states = known?.start === start ? known.states : [];
    let same = 0;
    while (same < states.length && thrown[same] === known!.thrown[same]) same += 1;
    states.length = same;
    // Said before the rest is folded: a step that throws leaves what holds so far.
    lastFold.set(first, { start, thrown, states });
    let state = states[same - 1] ?? start;
    for (const run of thrown.slice(same)) {
      state = through(run, state);
      states.push(state);
    }
    return state;
  };
}

function beginsWith(run: readonly ThrowEntry[], shorter: readonly ThrowEntry[]): boolean {
  return shorter.length <= run.length && shorter.every((entry, index) => entry === run[index]);
}
