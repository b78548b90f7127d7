import type { SimulatedAthlete } from './athlete.ts';
import type { Random } from './random.ts';

/** What changes in an athlete from throw to throw. */
export interface Body {
  readonly thrown: number;
  readonly driftTiltRad: number;
  readonly driftHeightM: number;
}

export const RESTED: Body = { thrown: 0, driftTiltRad: 0, driftHeightM: 0 };

/** After one more throw: a little more tired, and the slow drift one step on. */
export function afterThrow(body: Body, { drift }: Pick<SimulatedAthlete, 'drift'>, random: Random): Body {
  const keep = 1 - drift.pull;
  return {
    thrown: body.thrown + 1,
    driftTiltRad: keep * body.driftTiltRad + drift.tiltRad * random.normal(),
    driftHeightM: keep * body.driftHeightM + drift.heightM * random.normal(),
  };
}

/** Share of the rested speed that is left; never under 85 %: then a person stops. */
export function speedLeft({ thrown }: Body, { fatigue }: Pick<SimulatedAthlete, 'fatigue'>): number {
  return Math.max(0.85, 1 - fatigue.speedPerThrow * thrown);
}

/** How much wider everything scatters than rested; at most twice. */
export function scatterNow({ thrown }: Body, { fatigue }: Pick<SimulatedAthlete, 'fatigue'>): number {
  return Math.min(2, 1 + fatigue.scatterPerThrow * thrown);
}
