import type { Athlete, TargetZone } from '../../core/facts/coach.ts';
import { FAMILIES, type Family } from '../../core/facts/vocabulary.ts';
import { inchesToM } from '../../core/units/convert.ts';
import type { Random } from '../../simulators/random.ts';
import { NO_CHANGE, type Change, type Hand } from './hand.ts';
import { WINTER } from './parameters.ts';
import { meanBreak } from './true-miss.ts';

/** A grip or a cue that somebody suggests, and what it really does. */
interface Idea {
  readonly change: Change;
  readonly nothing: boolean;
}

/** Everything that is true of an athlete. Neither coach is ever shown it. */
export interface DrawnAthlete {
  readonly profile: Athlete;
  readonly release: { readonly sideFt: number; readonly heightFt: number; readonly extensionFt: number };
  readonly fastball: Hand;
  readonly families: Readonly<Record<Family, Hand>>;
  /** Set before the winter, for whatever family it will be. */
  readonly zone: TargetZone;
  readonly ideas: readonly Idea[];
}

type MeanAndSd = readonly [mean: number, sd: number];
const { athlete: BODY, fastball: FASTBALL, families: GIFTS, steadiness, target: TARGET, idea: IDEA } = WINTER;

/** An athlete of the population in the parameter file; `alike`: with the hand of a family drawn at random for all three. */
export function drawnAthlete(random: Random, id: string, alike: boolean): DrawnAthlete {
  const draw = ([mean, sd]: MeanAndSd): number => mean + sd * random.normal();
  const hand = random.uniform() < BODY.leftHanded ? 'left' : 'right';
  const sinker = random.uniform() < BODY.sinker;
  const release = { sideFt: draw(BODY.releaseSideFt), heightFt: draw(BODY.releaseHeightFt), extensionFt: draw(BODY.extensionFt) };
  const lean = random.normal();
  const steady = Math.exp(steadiness.ofAthlete * random.normal());
  const fastball: Hand = {
    mph: draw(FASTBALL.mph),
    rpm: draw(FASTBALL.rpm),
    tiltDeg: Math.max(0, draw(FASTBALL.tiltDeg)) + Math.max(0, draw(FASTBALL.sinkerTurnDeg)) * (sinker ? 1 : 0),
    efficiency: within(FASTBALL.efficiency[0] + FASTBALL.efficiency[1] * lean, 0.55, 0.995),
    seam: { armSide: 0, vertical: 0, scatter: 0.003 },
    scatter: widened(FASTBALL.scatter, steady),
  };
  const drawn = Object.fromEntries(FAMILIES.map((family) => [family, handOf(family, fastball, lean, steady, random)])) as Record<Family, Hand>;
  const one = drawn[FAMILIES[Math.floor(random.uniform() * FAMILIES.length)]!];
  const profile: Athlete = { id, name: `Athlete ${id}`, hand, birthYear: 2001, mainFastball: sinker ? 'sinker' : 'four-seam', units: 'imperial', language: 'en' };
  return {
    profile,
    release,
    fastball,
    families: alike ? { turnover: one, 'seam-effect': one, split: one } : drawn,
    zone: zoneFor(fastball, random),
    ideas: Array.from({ length: WINTER.ideas }, () => ideaFrom(random)),
  };
}

/** What the hand does with one family: partly as the fastball leans, mostly its own. */
function handOf(family: Family, fastball: Hand, lean: number, steady: number, random: Random): Hand {
  const gift = GIFTS[family];
  const gifted = gift.with * lean + Math.sqrt(1 - gift.with ** 2) * random.normal();
  const own = (): number => random.normal();
  const scatter = steady * Math.exp(steadiness.ofFamily * random.normal());
  // The gift is the turn of the axis, or with a seam effect the push of the seams.
  const pushes = family === 'seam-effect';
  const [turned, pushed] = pushes ? [own(), gifted] : [gifted, own()];
  return {
    mph: fastball.mph - at(gift.slowerMph, own()),
    rpm: fastball.rpm * within(at(gift.rpmShare, own()), 0.3, 1),
    tiltDeg: fastball.tiltDeg + at(gift.turnDeg, turned),
    efficiency: within(fastball.efficiency + at(gift.efficiencyMore, own()), 0.4, 0.995),
    seam: {
      armSide: at(gift.seam.armSide, pushes ? 0.7 * pushed + 0.714 * own() : own()),
      vertical: at(gift.seam.vertical, -pushed),
      scatter: gift.seam.scatter * scatter,
    },
    scatter: widened(gift.scatter, scatter),
  };
}

const at = ([mean, sd]: MeanAndSd, deviation: number): number => mean + sd * deviation;
const within = (value: number, least: number, most: number): number => Math.min(most, Math.max(least, value));

const widened = ({ mph, rpm, tiltDeg, efficiency }: Hand['scatter'], by: number): Hand['scatter'] =>
  ({ mph: mph * by, rpm: rpm * by, tiltDeg: tiltDeg * by, efficiency: efficiency * by });

function zoneFor(fastball: Hand, random: Random): TargetZone {
  const own = meanBreak(fastball);
  const radiusM = inchesToM(TARGET.radiusIn);
  const verticalM = inchesToM(at(TARGET.verticalIn, random.normal())) - own.verticalM;
  const armSideM = inchesToM(at(TARGET.armSideIn, random.normal())) - own.armSideM;
  return { kind: 'ellipse', verticalM: Math.min(verticalM, -inchesToM(TARGET.leastDropIn)), armSideM: Math.max(armSideM, 0), verticalRadiusM: radiusM, armSideRadiusM: radiusM };
}

function ideaFrom(random: Random): Idea {
  const nothing = random.uniform() < IDEA.nothing;
  const change: Change = {
    turnDeg: IDEA.turnDeg * random.normal(),
    rpmShare: IDEA.rpmShare * random.normal(),
    scatter: Math.exp(IDEA.scatter * random.normal()),
    seamArmSide: IDEA.seam * random.normal(),
    seamVertical: IDEA.seam * random.normal(),
  };
  return { nothing, change: nothing ? NO_CHANGE : change };
}
