/** The only file in the web that reads a clock. */

/** Milliseconds since 1970, as this screen believes. */
export function nowMs(): number {
  return Date.now();
}

/** The year as this screen believes, for the limits of a birth year. */
export function yearNow(): number {
  return new Date().getFullYear();
}
