/** Does one thing after the other: each begins once the one before it has come to its end, well or not. */
export type OneAtATime = <Result>(act: () => Promise<Result> | Result) => Promise<Result>;

export function oneAtATime(): OneAtATime {
  let turn: Promise<unknown> = Promise.resolve();
  return (act) => {
    const done = turn.then(act);
    turn = done.catch(() => {});
    return done;
  };
}
