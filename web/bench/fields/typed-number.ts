/** What was typed as a number; null for anything that is none. */
export function typedNumber(text: string): number | null {
  const trimmed = text.trim().replace(',', '.').replace('−', '-');
  if (trimmed === '') return null;
  const value = Number(trimmed);
  return Number.isFinite(value) ? value : null;
}

/** A number as a field shows it: no unit, no grouping, at most so many decimals. */
export function fieldText(value: number, decimals: number): string {
  return String(Number(value.toFixed(decimals)) + 0);
}
