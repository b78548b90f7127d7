/** Says what a long check found; `npm run prove` writes it below the name of the check into docs/prove.md. */
export function said(words: string): void {
  console.info(words);
}
