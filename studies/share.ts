/** A share of simulated runs and its standard error. */
export interface Share {
  readonly share: number;
  readonly error: number;
}

export function shareOf(hits: number, runs: number): Share {
  const share = hits / runs;
  return { share, error: Math.sqrt((share * (1 - share)) / runs) };
}
