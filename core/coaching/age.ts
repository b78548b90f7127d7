/** From here on an athlete is grown up for what a screen shows. */
const GROWN_UP_YEARS = 18;

/** The younger of the two ages that a birth year leaves possible in a year; rules use it. */
export function youngerAge(birthYear: number, year: number): number {
  return year - birthYear - 1;
}

/**
 * Whether an athlete may be under 18 in that year. A youth athlete is not shown live speed unless somebody asks:
 * the American Sports Medicine Institute's position statement for adolescent pitchers (2013) says to avoid radar guns.
 */
export function mayBeYouth(birthYear: number, year: number): boolean {
  return youngerAge(birthYear, year) < GROWN_UP_YEARS;
}
