/** The letter of a trial by its place in its session, the first at 0: A … Z, AA, AB … */
export function letterOf(index: number): string {
  const last = String.fromCharCode(65 + (index % 26));
  return index < 26 ? last : letterOf(Math.floor(index / 26) - 1) + last;
}
