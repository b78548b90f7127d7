import { readFileSync, writeFileSync } from 'node:fs';

const BEGIN = '<!-- study: what stands between these lines is written by `npm run study` -->';
const END = '<!-- study: end -->';

/**
 * Puts the output of the study in its place on the page and leaves the rest of the page as it is.
 * Throws when the page has lost the lines that mark the place.
 */
export function writeIntoPage(file: string, output: string): void {
  const page = readFileSync(file, 'utf8');
  const [begin, end] = [page.indexOf(BEGIN), page.indexOf(END)];
  if (begin < 0 || end < begin) throw new Error(`${file} has lost the two lines that mark the place of the study: ${BEGIN} and ${END}`);
  writeFileSync(file, `${page.slice(0, begin + BEGIN.length)}\n\n${output.trim()}\n\n${page.slice(end)}`);
}
