import { scaleLinear } from 'd3';

/** A moment after release, in seconds, and how far apart the two paths are then, in ball widths. */
export type GapPoint = readonly [timeS: number, widths: number];

/** What the gap line shows: one throw against the fastball aimed at the same place. */
export interface GapLineData {
  /** Another value starts the picture anew. */
  readonly generation: string;
  /** In the order of time; a missing stretch is a hole, and stays one. */
  readonly line: readonly GapPoint[];
  readonly decisionS: number;
  readonly decisionWidths: number;
  readonly plateWidths: number;
  readonly texts: {
    readonly name: string;
    readonly description: string;
    /** The value there with its unit, then the word for the place. */
    readonly decision: readonly [value: string, place: string];
    readonly plate: readonly [value: string, place: string];
    /** From when time counts; then where the decision point is, and how the two balls are held against each other there. Where they do not fit into one line each has its own, the decision point briefly if it must. */
    readonly afterRelease: string;
    readonly decided: { readonly at: string; readonly brief: string; readonly basis: string };
    /** Unit of the times. */
    readonly milliseconds: string;
  };
}

export interface GapLineOptions {
  readonly width: number;
  readonly height: number;
  readonly textPx: number;
}

/** Where times and gaps lie in the picture. */
export interface GapScale {
  readonly x: (timeS: number) => number;
  readonly y: (widths: number) => number;
  readonly ballPx: number;
  readonly endS: number;
}

/** The picture reaches at least so many ball widths, so that a small gap looks small. */
const LEAST_WIDTHS = 4;
/** Labels above the highest point, in text sizes. */
const HEAD = 2.7;
/** A step in time of more than so many ordinary ones is a hole. */
const HOLE_STEPS = 1.9;

/** The stretches of a line without holes: cut where a value is no number, and where time jumps. A lone point stays a point. */
export function stretches(line: readonly GapPoint[]): GapPoint[][] {
  const ordinaryS = ordinaryStep(line);
  const found: GapPoint[][] = [];
  let open = false;
  for (const point of line) {
    const known = Number.isFinite(point[0]) && Number.isFinite(point[1]);
    const last = found.at(-1)?.at(-1);
    if (!known) open = false;
    else if (open && last !== undefined && point[0] - last[0] <= ordinaryS * HOLE_STEPS) found.at(-1)!.push(point);
    else {
      found.push([point]);
      open = true;
    }
  }
  return found;
}

/** The middle one of the steps in time. */
function ordinaryStep(line: readonly GapPoint[]): number {
  const steps = line.slice(1).map(([timeS], index) => timeS - line[index]![0]).filter(Number.isFinite).sort((a, b) => a - b);
  return steps[Math.floor(steps.length / 2)] ?? Number.POSITIVE_INFINITY;
}

/** Fits times and gaps into the picture. A ball is as wide as it is high: the right edge leaves half of one. */
export function gapScale({ line, decisionS, decisionWidths, plateWidths }: GapLineData, { width, height, textPx }: GapLineOptions, footLines: number): GapScale {
  const known = stretches(line).flat();
  const endS = Math.max(decisionS, ...known.map(([timeS]) => timeS));
  const most = Math.max(LEAST_WIDTHS, decisionWidths, plateWidths, ...known.map(([, widths]) => widths));
  const bottom = height - (1.55 + footLines * 1.16) * textPx;
  const ballPx = Math.max(1, Math.min((bottom - HEAD * textPx) / most, width / 5));
  return {
    ballPx, endS,
    x: scaleLinear([0, endS], [textPx * 0.1, width - Math.max(ballPx / 2, textPx * 0.15) - textPx * 0.06]),
    y: (widths) => bottom - widths * ballPx,
  };
}
