import { readFileSync } from 'node:fs';

/** A place on a drawing, px. */
export type Px = readonly [x: number, y: number];

export interface Drawing {
  readonly width: number;
  readonly height: number;
  /** What is seen, for those who do not see it. */
  readonly title: string;
  readonly parts: readonly string[];
}

const COLOURS = ['ground', 'ink', 'quiet', 'line', 'fastball', 'work', 'attention'] as const;

/**
 * A file that stands on any page: it brings its ground and the colours of both themes along, from the sheet of the screens.
 * Lengths are rounded to a tenth of a pixel, so that engines which differ in the last bits of a sine write the same file.
 */
export function fileOf({ width, height, title, parts }: Drawing): string {
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img" aria-labelledby="said">`,
    `<title id="said">${escaped(title)}</title>`,
    `<style>\n${sheet()}\n</style>`,
    `<rect class="ground" width="${width}" height="${height}" rx="10"/>`,
    ...parts,
    '</svg>',
    '',
  ].join('\n');
}

function sheet(): string {
  const theme = readFileSync(new URL('../../../web/theme.css', import.meta.url), 'utf8');
  return [
    `svg { ${coloursIn(theme, ':root')} font-family: ${valueOf(theme, ':root', 'face')}; font-size: 15px; font-variant-numeric: tabular-nums; }`,
    `@media (prefers-color-scheme: dark) { svg { ${coloursIn(theme, ":root[data-theme='dark']")} } }`,
    'text { fill: var(--ink); } text.quiet { fill: var(--quiet); } text.big { font-size: 19px; font-weight: 600; }',
    'path, line, circle, ellipse, polygon { fill: none; stroke: var(--ink); stroke-width: 1.6; stroke-linecap: round; stroke-linejoin: round; }',
    '.ground { fill: var(--ground); } .quiet { stroke: var(--quiet); } .line { stroke: var(--line); } .hair { stroke-width: 1; }',
    '.work { stroke: var(--work); } .attention { stroke: var(--attention); } .fastball { stroke: var(--fastball); } .thick { stroke-width: 3; } .dashed { stroke-dasharray: 6 5; } .dotted { stroke-dasharray: 1.5 5; }',
    'text.work, text.attention, text.fastball, text.quiet, text.line { stroke: none; }',
    '.full.work { fill: var(--work); } .full.attention { fill: var(--attention); } .full.fastball { fill: var(--fastball); } .full.quiet { fill: var(--quiet); } .wash { fill: var(--line); fill-opacity: 0.45; stroke: none; }',
  ].join('\n');
}

function coloursIn(theme: string, selector: string): string {
  return COLOURS.map((name) => `--${name}: ${valueOf(theme, selector, name)};`).join(' ');
}

function valueOf(theme: string, selector: string, name: string): string {
  const block = theme.slice(theme.indexOf(`\n${selector} {`));
  const found = new RegExp(`--${name}: ([^;]+);`).exec(block)?.[1];
  if (found === undefined) throw new Error(`web/theme.css has no --${name} in ${selector}; the drawings need it.`);
  return found;
}

function escaped(words: string): string {
  return words.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}

/** A length as it is written. */
function px(value: number): string {
  const tenths = Math.round(value * 10) / 10;
  return String(tenths === 0 ? 0 : tenths);
}

export function line([x1, y1]: Px, [x2, y2]: Px, kind: string): string {
  return `<line class="${kind}" x1="${px(x1)}" y1="${px(y1)}" x2="${px(x2)}" y2="${px(y2)}"/>`;
}

export function curve(points: readonly Px[], kind: string, closed = false): string {
  const d = points.map(([x, y], index) => `${index === 0 ? 'M' : 'L'}${px(x)},${px(y)}`).join('');
  return `<path class="${kind}" d="${d}${closed ? 'Z' : ''}"/>`;
}

/** What lies inside an odd number of closed lines. */
export function region(lines: readonly (readonly Px[])[], kind: string): string {
  const d = lines.map((points) => `${points.map(([x, y], index) => `${index === 0 ? 'M' : 'L'}${px(x)},${px(y)}`).join('')}Z`).join('');
  return `<path class="${kind}" fill-rule="evenodd" d="${d}"/>`;
}

export function dot([x, y]: Px, radius: number, kind: string): string {
  return `<circle class="${kind}" cx="${px(x)}" cy="${px(y)}" r="${px(radius)}"/>`;
}

export function oval([x, y]: Px, [along, across]: readonly [number, number], turnDeg: number, kind: string): string {
  return `<ellipse class="${kind}" rx="${px(along)}" ry="${px(across)}" transform="translate(${px(x)},${px(y)}) rotate(${px(turnDeg)})"/>`;
}

export function box([x, y]: Px, width: number, height: number, kind: string): string {
  return curve([[x, y], [x + width, y], [x + width, y + height], [x, y + height]], kind, true);
}

/** A shaft with an open head. */
export function arrow(from: Px, to: Px, kind: string): string {
  const angle = Math.atan2(to[1] - from[1], to[0] - from[0]);
  const barb = (turn: number): Px => [to[0] - 9 * Math.cos(angle + turn), to[1] - 9 * Math.sin(angle + turn)];
  return curve([from, to], kind) + curve([barb(0.5), to, barb(-0.5)], kind);
}

export function cross([x, y]: Px, kind: string): string {
  return line([x - 5, y - 5], [x + 5, y + 5], kind) + line([x - 5, y + 5], [x + 5, y - 5], kind);
}

export type Anchor = 'start' | 'middle' | 'end';

/** Words at a place of their base line. */
export function say([x, y]: Px, words: string, kind = '', anchor: Anchor = 'start'): string {
  const attributes = [kind && ` class="${kind}"`, anchor !== 'start' && ` text-anchor="${anchor}"`].filter(Boolean).join('');
  return `<text x="${px(x)}" y="${px(y)}"${attributes}>${escaped(words)}</text>`;
}

/** Several lines of words, the first at the place. */
export function tell([x, y]: Px, lines: readonly string[], kind = '', anchor: Anchor = 'start'): string {
  return lines.map((words, index) => say([x, y + index * 19], words, kind, anchor)).join('');
}
