/** Longest phrase that is kept on one line: a longer one would not fit the column. */
const LONGEST = 11;
const NO_BREAK = '\u00a0';

/** The same words, with a number kept beside its unit, and a short side of the body in one piece. */
export function unbroken(text: string): string {
  return text
    .replace(/(\d) (in|cm|mph|km\/h|ms)\b/g, `$1${NO_BREAK}$2`)
    .replace(/(arm|glove) side/g, (phrase) => (phrase.length <= LONGEST ? phrase.replace(' ', NO_BREAK) : phrase));
}
