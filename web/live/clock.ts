/** The only file in the web that reads a clock. */

/** Milliseconds since 1970, as this screen believes. */
export function nowMs(): number {
  return Date.now();
}

/** Milliseconds that only ever grow: for how long something took, never for when it was. */
export function elapsedMs(): number {
  return performance.now();
}

/** The year as this screen believes, for the limits of a birth year. */
export function yearNow(): number {
  return new Date().getFullYear();
}
