import type { ThrowEntry, Thrown } from './ledger.ts';

/**
 * A fold over throws from the first to the last, nothing else; but where it went through a run before, from the very same state,
 * it remembers where that led. So one throw more costs a run, and one that changed costs the runs after it.
 * @param step must not change the state that it is given
 */
export function rememberedFold<State extends object>(step: (state: State, entry: ThrowEntry) => State): (thrown: Thrown, start: State) => State {
  const remembered = new WeakMap<readonly ThrowEntry[], { readonly from: State; readonly to: State }>();
  return (thrown, start) => {
    let state = start;
    for (const run of thrown) {
      const known = remembered.get(run);
      const to: State = known?.from === state ? known.to : run.reduce(step, state);
      if (known?.from !== state) remembered.set(run, { from: state, to });
      state = to;
    }
    return state;
  };
}
