/** The same words with a capital first. */
export function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** Words as a sentence: a capital first, and a full stop where they end without one. */
export function asSentence(words: string): string {
  return /[.!?]$/.test(words) ? capital(words) : `${capital(words)}.`;
}
