import type { Layer } from './described.ts';
import type { GapScale } from './gap-scale.ts';

interface Column {
  readonly timeS: number;
  readonly widths: number;
}

/** Balls smaller than this are a smear, not a count. */
const LEAST_BALL_PX = 7;

/** Balls that stand on each other up to the gap at a moment, the last one cut off at the top: ball widths to count. */
export function drawBalls(group: Layer, columns: readonly Column[], scale: GapScale): void {
  const drawn = scale.ballPx < LEAST_BALL_PX ? [] : columns.flatMap(({ timeS, widths }) => ballsUpTo(widths).map((share, index) => ({ timeS, index, share })));
  group.selectAll<SVGPathElement, (typeof drawn)[number]>('path').data(drawn, ({ timeS, index }) => `${timeS} ${index}`).join('path').attr('class', 'ball')
    .attr('d', ({ timeS, index, share }) => ballPath(scale.x(timeS), scale.y(index), scale.ballPx, share));
}

/** How much of each ball is seen: whole ones, and what is left of the last. */
export function ballsUpTo(widths: number): number[] {
  const whole = Math.floor(Math.max(0, widths) + 1e-9);
  const rest = widths - whole;
  return [...Array.from({ length: whole }, () => 1), ...(rest > 0.02 ? [rest] : [])];
}

/** The lower share of a ball that stands on `floor`, in height. */
function ballPath(x: number, floor: number, ballPx: number, share: number): string {
  const r = ballPx / 2;
  if (share >= 1) return `M${x - r},${floor - r}a${r},${r} 0 1,0 ${ballPx},0a${r},${r} 0 1,0 ${-ballPx},0Z`;
  const half = Math.sqrt(Math.max(0, r * r - (ballPx * share - r) ** 2));
  const top = floor - ballPx * share;
  return `M${x - half},${top}A${r},${r} 0 ${share > 0.5 ? 1 : 0},0 ${x + half},${top}Z`;
}
