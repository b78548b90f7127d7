/** A picture, or in words why there is none. */
export type Shown<T> = { readonly kind: 'picture'; readonly data: T } | { readonly kind: 'words'; readonly words: string };

export function inWords<T>(words: string): Shown<T> {
  return { kind: 'words', words };
}
