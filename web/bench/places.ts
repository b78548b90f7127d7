/** The places of Bench. A narrow screen shows one of them, a tablet the throws and one more, a wide one the throws, the target and one more. */
export const PLACES = ['throws', 'target', 'trial', 'session'] as const;
export type Place = (typeof PLACES)[number];
