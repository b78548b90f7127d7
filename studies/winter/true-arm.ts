import { DEFAULT_DISTANCE_M, FAMILIES, type Family } from '../../core/facts/vocabulary.ts';
import type { Vector } from '../../core/flight/vector.ts';
import { degToRad, feetToM } from '../../core/units/convert.ts';
import type { PitchShape } from '../../simulators/athlete.ts';
import { afterThrow, RESTED, scatterNow, speedLeft, type Body } from '../../simulators/body.ts';
import type { Random } from '../../simulators/random.ts';
import { drawShape, middleOf } from '../../simulators/sampling.ts';
import type { Arm, Asked } from './arm.ts';
import { measured, type Thrown } from './device.ts';
import type { DrawnAthlete } from './drawn-athlete.ts';
import { aimOf, flown, type Direction } from './flown.ts';
import { changed, NO_CHANGE, shapeOf, type Change, type Hand } from './hand.ts';
import { WINTER } from './parameters.ts';

const { withinDay, day: DAY } = WINTER;
const FATIGUE = { fatigue: { speedPerThrow: withinDay.speedPerThrow, scatterPerThrow: withinDay.scatterPerThrow } };
const DRIFT = { drift: { tiltRad: degToRad(withinDay.tiltDeg), heightM: withinDay.heightM, pull: withinDay.pull } };
const COMMAND_RAD = degToRad(WINTER.commandDeg);

/** The hand of a family after the ideas that are held on to. */
export function handWith(athlete: DrawnAthlete, family: Family, ideas: readonly number[]): Hand {
  return ideas.reduce((hand, idea) => changed(hand, athlete.ideas[idea]!.change), athlete.families[family]);
}

/** A drawn athlete with the device before it. */
export function trueArm(athlete: DrawnAthlete, random: Random): Arm {
  const from = releaseOf(athlete);
  let body: Body = RESTED;
  let today = feltOn(random);
  let pitches = new Map<string, Pitch>();
  const pitchFor = (asked: Asked): Pitch => {
    const key = asked.kind === 'fastball' ? asked.kind : `${asked.family}/${asked.ideas.join()}`;
    const known = pitches.get(key) ?? pitchOf(handToday(athlete, asked, today), from);
    pitches.set(key, known);
    return known;
  };
  return {
    profile: athlete.profile,
    zone: athlete.zone,
    nextDay: () => {
      body = RESTED;
      today = feltOn(random);
      pitches = new Map();
    },
    throws: (asked) => {
      const thrown = thrownNow(pitchFor(asked), from, body, random);
      body = afterThrow(body, DRIFT, random);
      return measured({ ...thrown, extensionM: DEFAULT_DISTANCE_M.mound - from[1] }, athlete.profile.hand, random);
    },
  };
}

interface Pitch {
  readonly shape: PitchShape;
  /** Where the throw that is meant has to leave for. */
  readonly aim: Direction;
}

function pitchOf(hand: Hand, from: Vector): Pitch {
  const shape = shapeOf(hand);
  return { shape, aim: aimOf(middleOf(shape), from) };
}

/** One throw as the body is now: drawn, missed by the athlete's command, and flown. */
function thrownNow({ shape, aim }: Pitch, from: Vector, body: Body, random: Random): Pick<Thrown, 'launch' | 'flight'> {
  const drawn = drawShape(shape, random, scatterNow(body, FATIGUE));
  const left = speedLeft(body, FATIGUE);
  const now = { ...drawn, speedMps: drawn.speedMps * left, spinRpm: drawn.spinRpm * left, tiltRad: drawn.tiltRad + body.driftTiltRad };
  const missed = { upRad: aim.upRad + COMMAND_RAD * random.normal(), rightRad: aim.rightRad + COMMAND_RAD * random.normal() };
  return flown(now, [from[0], from[1], from[2] + body.driftHeightM], missed);
}

function releaseOf({ release }: DrawnAthlete): Vector {
  return [-feetToM(release.sideFt), DEFAULT_DISTANCE_M.mound - feetToM(release.extensionFt), feetToM(release.heightFt)];
}

/** What a day does: one turn for all throws, and the feel for each family. */
interface Day {
  readonly turnDeg: number;
  readonly feel: Readonly<Record<Family, { readonly turnDeg: number; readonly rpm: number }>>;
}

function feltOn(random: Random): Day {
  const turnDeg = DAY.tiltDeg * random.normal();
  const feel = FAMILIES.map((family) => [family, { turnDeg: DAY.feelTiltDeg * random.normal(), rpm: DAY.feelRpm * random.normal() }]);
  return { turnDeg, feel: Object.fromEntries(feel) as Day['feel'] };
}

function handToday(athlete: DrawnAthlete, asked: Asked, { turnDeg, feel }: Day): Hand {
  const turned = (by: number): Change => ({ ...NO_CHANGE, turnDeg: by });
  if (asked.kind === 'fastball') return changed(athlete.fastball, turned(turnDeg));
  const hand = changed(handWith(athlete, asked.family, asked.ideas), turned(turnDeg + feel[asked.family].turnDeg));
  return { ...hand, rpm: hand.rpm + feel[asked.family].rpm };
}
