/** How often the server sends its pulse to a viewer. */
export const PULSE_SECONDS = 2;
/** Silence after which the far side counts as stale. */
export const STALE_AFTER_SECONDS = 5;
