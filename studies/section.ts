import type { Share } from './share.ts';

/** One table of a study, with what it is about and which of its bounds were missed. */
export interface Section {
  readonly title: string;
  readonly about: readonly string[];
  readonly header: readonly string[];
  readonly rows: readonly (readonly string[])[];
  /** Sentences; empty when every bound was kept. */
  readonly missed: readonly string[];
}

/** A section as markdown. */
export const sectionText = ({ title, about, header, rows, missed }: Section): string =>
  [
    `### ${title}`,
    about.join('\n'),
    [header, header.map(() => '---'), ...rows].map(tableLine).join('\n'),
    ...missed.map((sentence) => `**Missed: ${sentence}**`),
  ].join('\n\n');

const tableLine = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;

/** In percent with one standard error: "0.71 ± 0.04". */
export const percent = ({ share, error }: Share): string => `${(100 * share).toFixed(2)} ± ${(100 * error).toFixed(2)}`;

/** In percent without the error, for what stands beside. */
export const roughPercent = ({ share }: Share): string => (100 * share).toFixed(1);

/** A share that may not be above, or not below, what was promised. */
export type Bound = { readonly atMost: number } | { readonly atLeast: number };

const keeps = (share: Share, bound: Bound): boolean => ('atMost' in bound ? share.share <= bound.atMost : share.share >= bound.atLeast);

export const boundText = (bound: Bound | null): string => {
  if (bound === null) return 'none';
  return 'atMost' in bound ? `at most ${100 * bound.atMost}` : `at least ${100 * bound.atLeast}`;
};

/** The sentence for a bound that was missed, or nothing. */
export const missedBy = (what: string, share: Share, bound: Bound | null): string[] =>
  bound === null || keeps(share, bound) ? [] : [`${what}: ${percent(share)} % where ${boundText(bound)} % was promised.`];
