import type { Effort } from '../core/facts/vocabulary.ts';
import { standardAirDensityKgM3 } from '../core/flight/air.ts';
import { flyPitch, type Flight, type FlightConditions, type Launch } from '../core/flight/fly.ts';
import { mirrorSpin, mirrorVector } from '../core/flight/mirror.ts';
import { spinAxisFromTilt } from '../core/flight/spin.ts';
import type { Vector } from '../core/flight/vector.ts';
import type { PitchShape, SimulatedAthlete } from './athlete.ts';
import { scatterNow, speedLeft, type Body } from './body.ts';
import { draw, drawShape, middleOf, type DrawnShape } from './sampling.ts';
import type { Random } from './random.ts';

export interface Situation {
  readonly distanceM: number;
  readonly effort: Effort;
}

export interface ThrownBall {
  readonly launch: Launch;
  readonly extensionM: number;
  readonly flight: Flight;
  readonly seamAxis?: NonNullable<PitchShape['seamAxis']>;
}

/** Share of full speed. Invented: catch partners differ more than this. */
const SPEED_SHARE: Readonly<Record<Effort, number>> = { easy: 0.75, firm: 0.88, full: 1 };
/** Where every throw is aimed: the middle of the plate at the knees and a bit. */
const AIM = { rightM: 0, heightM: 0.75 } as const;
const STEEPEST_RAD = 0.6;

/**
 * One throw: what was called is drawn from its distributions, aimed as the athlete would aim the throw meant, missed by the
 * athlete's command, and flown. A left-hander is a right-hander in the mirror. Null when the ball cannot reach that far.
 */
export function throwBall(athlete: SimulatedAthlete, shape: PitchShape, body: Body, situation: Situation, random: Random): ThrownBall | null {
  const scatter = scatterNow(body, athlete);
  const share = SPEED_SHARE[situation.effort] * speedLeft(body, athlete);
  const drawn = asThrown(drawShape(shape, random, scatter), share, body.driftTiltRad);
  const extensionM = draw(athlete.release.extensionM, random, scatter);
  const from: Vector = [
    -draw(athlete.release.armSideM, random, scatter),
    situation.distanceM - extensionM,
    draw(athlete.release.heightM, random, scatter) + body.driftHeightM,
  ];
  const meant = aim(from, asThrown(middleOf(shape), share, body.driftTiltRad));
  const direction = {
    upRad: meant.upRad + athlete.commandRad * scatter * random.normal(),
    rightRad: meant.rightRad + athlete.commandRad * scatter * random.normal(),
  };
  const { launch, conditions } = handed(athlete, launchOf(from, direction, drawn), conditionsOf(drawn));
  const flight = flyPitch(launch, conditions);
  return flight.ending === 'plane' && flight.end.positionM[2] > -1 ? { launch, extensionM, flight, ...(shape.seamAxis && { seamAxis: shape.seamAxis }) } : null;
}

function asThrown(drawn: DrawnShape, share: number, driftTiltRad: number): DrawnShape {
  return { ...drawn, speedMps: drawn.speedMps * share, spinRpm: drawn.spinRpm * share, tiltRad: drawn.tiltRad + driftTiltRad };
}

interface Direction {
  readonly upRad: number;
  readonly rightRad: number;
}

function launchOf(positionM: Vector, { upRad, rightRad }: Direction, drawn: DrawnShape): Launch {
  const { speedMps } = drawn;
  const velocityMps: Vector = [
    speedMps * Math.cos(upRad) * Math.sin(rightRad),
    -speedMps * Math.cos(upRad) * Math.cos(rightRad),
    speedMps * Math.sin(upRad),
  ];
  return { positionM, velocityMps, spinRadps: spinAxisFromTilt({ ...drawn, velocityMps }) };
}

function conditionsOf({ unexplained }: DrawnShape): FlightConditions {
  return { airDensityKgM3: standardAirDensityKgM3, seamCoefficient: { x: -unexplained.armSide, z: unexplained.vertical } };
}

/** The direction that brings the throw meant to the plate where it was aimed, found by throwing it in mind and mending. */
function aim(from: Vector, meant: DrawnShape): Direction {
  let direction: Direction = { upRad: 0, rightRad: 0 };
  for (let round = 0; round < 6; round += 1) {
    const { end } = flyPitch(launchOf(from, direction, meant), { ...conditionsOf(meant), timeStepS: 0.02 });
    const farM = from[1] - end.positionM[1];
    direction = {
      upRad: Math.min(STEEPEST_RAD, direction.upRad + (AIM.heightM - end.positionM[2]) / farM),
      rightRad: direction.rightRad + (AIM.rightM - end.positionM[0]) / farM,
    };
  }
  return direction;
}

/** Everything above is right-handed; this is the only mirror. */
function handed(athlete: SimulatedAthlete, launch: Launch, conditions: FlightConditions): { launch: Launch; conditions: FlightConditions } {
  if (athlete.profile.hand === 'right') return { launch, conditions };
  const { x, z } = conditions.seamCoefficient!;
  return {
    launch: { positionM: mirrorVector(launch.positionM), velocityMps: mirrorVector(launch.velocityMps), spinRadps: mirrorSpin(launch.spinRadps) },
    conditions: { ...conditions, seamCoefficient: { x: 0 - x, z } },
  };
}
