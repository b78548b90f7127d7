/** A new name that nobody else has. Works on a plain http address too, where crypto.randomUUID does not exist. */
export function freshId(): string {
  return [...crypto.getRandomValues(new Uint8Array(12))].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
