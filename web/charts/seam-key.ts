import type { Layer } from './described.ts';
import { lettersIn, linesOf, writeLines } from './lines.ts';

/** One line of what the signs of the seam map mean; without a sign it is a sentence of its own. */
export interface KeyRow {
  readonly sign: 'axis' | 'ring' | 'far' | 'arrow' | null;
  readonly words: string;
}

const LINE = 1.14;
/** Between one row and the next, in text sizes. */
const ROW_GAP = 0.22;
const SIGN_ROOM = 1.25;

/** How high the rows stand, in pixels. */
export function keyHeight(rows: readonly KeyRow[], width: number, textPx: number): number {
  return rows.reduce((sum, row) => sum + linesIn(row, width, textPx).length * LINE + ROW_GAP, -ROW_GAP) * textPx;
}

/** Writes the rows below each other from a corner, each with its sign before it. */
export function drawKey(group: Layer, rows: readonly KeyRow[], { x, y, width }: { readonly x: number; readonly y: number; readonly width: number }, textPx: number): void {
  let top = y;
  const placed = rows.map((row) => {
    const lines = linesIn(row, width, textPx);
    const at = { ...row, lines, baseline: top + textPx * 0.88, middle: top + textPx * 0.57 };
    top += (lines.length * LINE + ROW_GAP) * textPx;
    return at;
  });
  group.selectAll<SVGTextElement, (typeof placed)[number]>('text').data(placed).join('text')
    .attr('class', ({ sign }) => `key-text ${sign ?? 'sentence'}`).attr('y', ({ baseline }) => baseline)
    .each(function write({ sign, lines }) { writeLines(this, lines, sign === null ? x : x + SIGN_ROOM * textPx, LINE * textPx, 'down'); });
  const signs = placed.flatMap(({ sign, middle }) => (sign === null ? [] : shapesOf(sign, x + textPx * 0.42, middle, textPx)));
  group.selectAll<SVGPathElement, (typeof signs)[number]>('path').data(signs).join('path')
    .attr('class', ({ kind }) => kind).attr('d', ({ d }) => d);
}

function linesIn({ sign, words }: KeyRow, width: number, textPx: number): string[] {
  return linesOf(words, lettersIn(width - (sign === null ? 0 : SIGN_ROOM * textPx), textPx));
}

function shapesOf(sign: Exclude<KeyRow['sign'], null>, x: number, y: number, textPx: number): { readonly kind: string; readonly d: string }[] {
  const half = textPx * 0.42;
  const bar = `M${x - half},${y}H${x + half}`;
  switch (sign) {
    case 'axis': return [{ kind: 'axis-ring', d: circle(x, y, textPx * 0.24) }, { kind: 'axis-dot', d: circle(x, y, textPx * 0.075) }];
    case 'ring': return [{ kind: 'passing-ring', d: bar }, { kind: 'pass', d: circle(x, y, textPx * 0.17) }];
    case 'arrow': return [{ kind: 'unexplained-arrow', d: `${bar}m${-half * 0.5},${-half * 0.5}l${half * 0.5},${half * 0.5}l${-half * 0.5},${half * 0.5}` }];
    case 'far': return [{ kind: 'seam-line far', d: bar }];
  }
}

function circle(x: number, y: number, r: number): string {
  return `M${x - r},${y}a${r},${r} 0 1,0 ${2 * r},0a${r},${r} 0 1,0 ${-2 * r},0Z`;
}
