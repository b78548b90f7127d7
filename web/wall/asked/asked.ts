/** The pictures that a coach may ask for beside the plane, one at a time. */
export const ASKED = ['seam-map', 'gap-line', 'plate'] as const;
export type Asked = (typeof ASKED)[number];

const KEYS: Readonly<Record<string, Asked>> = { s: 'seam-map', g: 'gap-line', p: 'plate' };

/** What is asked for after a key: its own picture, or none if that was shown; undefined for a key without meaning here. */
export function askedByKey(key: string, shown: Asked | null): Asked | null | undefined {
  const asked = KEYS[key.toLowerCase()];
  return asked === undefined ? undefined : afterAsking(asked, shown);
}

/** Asking for what is shown puts it away. */
export function afterAsking(asked: Asked, shown: Asked | null): Asked | null {
  return asked === shown ? null : asked;
}
