/** One rule of the device protocol, as a person reads it, and whether it was kept. */
export interface Finding {
  /** Short and stable, for a program that reads the report. */
  readonly rule: string;
  readonly sentence: string;
  /** `not-reached`: an earlier fault left no way to look. */
  readonly outcome: 'kept' | 'broken' | 'not-reached';
  /** What was seen instead, and what to do; null where the rule was kept. */
  readonly seen: string | null;
}

/** The report as lines for a person: every rule, and under each broken one what was seen. */
export function reportLines(findings: readonly Finding[]): string[] {
  const broken = findings.filter(({ outcome }) => outcome !== 'kept').length;
  return [
    ...findings.flatMap(({ rule, sentence, outcome, seen }) => [`${MARK[outcome]} ${rule}: ${sentence}`, ...(seen === null ? [] : [`    ${seen}`])]),
    broken === 0 ? `All ${findings.length} rules were kept.` : `${findings.length - broken} of ${findings.length} rules were kept.`,
  ];
}

const MARK = { kept: 'kept       ', broken: 'BROKEN     ', 'not-reached': 'not reached' } as const;
