import { scaleLinear } from 'd3';

/** One throw on the strip. */
export interface StripThrow {
  readonly place: number;
  /** On the timeline. */
  readonly atMs: number;
  readonly letter: string | null;
  readonly fastball: boolean;
  /** Null where there is no zone to judge it by. */
  readonly onTarget: boolean | null;
  readonly excluded: boolean;
  readonly bookmarked: boolean;
  readonly noted: boolean;
  /** It is held against others. */
  readonly held: boolean;
}

/** A stretch of quiet that counts as less than it lasted. */
export interface FoldedQuiet {
  readonly fromMs: number;
  readonly toMs: number;
  /** How long it was; null where that is not worth a word. */
  readonly said: string | null;
}

/** A whole session along its timeline. */
export interface SessionStripData {
  readonly lengthMs: number;
  /** In the order of the timeline. */
  readonly throws: readonly StripThrow[];
  /** Notes about no throw. */
  readonly notes: readonly { readonly atMs: number }[];
  readonly folded: readonly FoldedQuiet[];
  /** What is played over and over. */
  readonly part: { readonly fromMs: number; readonly toMs: number } | null;
}

export interface StripOptions {
  readonly width: number;
  readonly height: number;
  readonly textPx: number;
  /** Room at either end, for half of the knob that slides along. */
  readonly insetPx: number;
}

/** Where things lie on the strip: letters above ticks above flags above the track. */
export interface StripScale {
  readonly x: (atMs: number) => number;
  readonly height: number;
  readonly letterY: number;
  readonly tickTop: number;
  readonly tickBottom: number;
  readonly flagY: number;
  readonly trackY: number;
  /** Of a tick. */
  readonly tickPx: number;
}

/** Half of the height of the knob's room: the track runs in its middle. */
const TRACK_FROM_BOTTOM = 22;
const WIDEST_TICK = 9;
/** Narrower than this a hollow tick cannot be told from a filled one. */
const HOLLOW_FROM = 4.5;

export function stripScale({ lengthMs, throws }: SessionStripData, { width, height, textPx, insetPx }: StripOptions): StripScale {
  const x = scaleLinear([0, Math.max(1, lengthMs)], [insetPx, width - insetPx]);
  const trackY = height - TRACK_FROM_BOTTOM;
  return { x, height, trackY, letterY: textPx * 0.95, tickTop: textPx * 1.35, tickBottom: trackY - 30, flagY: trackY - 20, tickPx: tickWidth(throws, x) };
}

/** As wide as lets four of five neighbours stand apart. */
function tickWidth(throws: readonly StripThrow[], x: (atMs: number) => number): number {
  const gaps = throws.slice(1).map(({ atMs }, index) => x(atMs) - x(throws[index]!.atMs)).sort((a, b) => a - b);
  return Math.max(1.6, Math.min(WIDEST_TICK, (gaps[Math.floor(gaps.length / 5)] ?? WIDEST_TICK) - 2));
}

/** The outline of a tick. Where ticks are too narrow to be hollow, a miss is half as high. */
export function stripMarkPath({ atMs, excluded, fastball, onTarget }: StripThrow, { x: xOf, tickTop: top, tickBottom: bottom, tickPx }: StripScale): string {
  const half = tickPx / 2;
  // A tenth of a pixel is nothing to see, and ten thousand ticks are long to write.
  const x = Math.round(xOf(atMs) * 10) / 10;
  if (excluded) {
    const arm = Math.min(4, Math.max(2, half));
    const middle = (top + bottom) / 2;
    return `M${x - arm},${middle - arm}l${2 * arm},${2 * arm}m${-2 * arm},0l${2 * arm},${-2 * arm}`;
  }
  if (fastball) return `M${x},${bottom}V${bottom - (bottom - top) * 0.42}`;
  const from = onTarget === false && tickPx < HOLLOW_FROM ? (top + bottom) / 2 : top;
  const r = Math.min(half, 2.5);
  const flat = tickPx - 2 * r;
  return `M${x - half},${from + r}a${r},${r} 0 0,1 ${r},${-r}h${flat}a${r},${r} 0 0,1 ${r},${r}V${bottom - r}a${r},${r} 0 0,1 ${-r},${r}h${-flat}a${r},${r} 0 0,1 ${-r},${-r}Z`;
}
