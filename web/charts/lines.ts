import { put } from './described.ts';

/** Mean width of a letter of this face in text sizes, a little generous. */
const LETTER = 0.53;

/** How many letters stand beside each other in so many pixels. */
export function lettersIn(widthPx: number, textPx: number): number {
  return Math.floor(widthPx / textPx / LETTER);
}

/** The words of a text in lines of at most so many letters, where words allow it. */
export function linesOf(text: string, mostLetters: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const line = lines.at(-1);
    if (line !== undefined && line.length + 1 + word.length <= mostLetters) lines[lines.length - 1] = `${line} ${word}`;
    else lines.push(word);
  }
  return lines;
}

/** Writes lines into a text element, the first at its place going down, or the last at its place going up. */
export function writeLines(text: SVGTextElement, lines: readonly string[], x: number, lineHeight: number, way: 'down' | 'up'): void {
  const first = way === 'down' ? 0 : -(lines.length - 1) * lineHeight;
  while (text.childElementCount > lines.length) text.lastElementChild!.remove();
  lines.forEach((line, index) => {
    const span = (text.children[index] ?? text.appendChild(document.createElementNS('http://www.w3.org/2000/svg', 'tspan'))) as SVGTSpanElement;
    put(span, 'x', String(x));
    put(span, 'dy', String(index === 0 ? first : lineHeight));
    if (span.textContent !== line) span.textContent = line;
  });
}
