/** How far two numbers are apart beside the larger of them; 0 when both are 0. */
export function relativeGap(a: number, b: number): number {
  const larger = Math.max(Math.abs(a), Math.abs(b));
  return larger === 0 ? 0 : Math.abs(a - b) / larger;
}
