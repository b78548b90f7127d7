/** A text, or a text made from what it is about. */
type Said = string | ((...about: never[]) => string);
export interface Texts {
  readonly [name: string]: Said | Texts;
}
/** Texts that may say anything, but under the same names and about the same things. */
type Like<T> = { readonly [K in keyof T]: T[K] extends string ? string : T[K] extends (...about: infer A) => string ? (...about: A) => string : Like<T[K]> };

/** The texts of one screen in English and Spanish: Spanish must have every key that English has, no more. */
export function inBoth<const T extends Texts>(en: T, es: Like<T>): { readonly en: Like<T>; readonly es: Like<T> } {
  return { en: en as unknown as Like<T>, es };
}
