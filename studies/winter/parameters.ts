/**
 * What the thousand athletes of the simulated winter are drawn from. Everything here is invented, of sizes that a coach would
 * believe, and was fixed before any rule was run against it: none of it is measured, none of it is published. The thresholds of
 * efficiency by which coaches choose a family stand nowhere in this file. What the trade believes is in it as correlations only:
 * an efficient fastball tends to go with a hand that turns over, an inefficient one with a hand from which the seams push. They
 * lean one way; they do not decide. Looked at beforehand was only that each family is the best of about a third of the athletes.
 *
 * `[mean, SD]` over athletes unless it says otherwise; a right-hander's terms, a left-hander is the mirror.
 */
export const WINTER = {
  seeds: [201, 202, 203, 204, 205, 206, 207, 208, 209, 210, 211, 212, 213, 214, 215, 216, 217, 218, 219, 220],
  athletesPerSeed: 50,

  /** The budget of both coaches: as many bullpens, as many throws. Five fastballs each time, because the baseline asks for five. */
  bullpens: 12,
  throwsPerBullpen: 30,
  fastballsPerBullpen: 5,
  /** Bullpens that the advised coach may spend on families; what is left of them goes to grips and cues. */
  familyBullpensAtMost: 4,
  /** Bullpens that one grip or cue may take: about 25 throws of each, what a coach has patience for. */
  bullpensPerTry: 2,
  /** Grips and cues that wait to be tried; more than a winter holds. */
  ideas: 12,

  athlete: {
    leftHanded: 0.28,
    /** Main fastball a sinker, else a four-seam. */
    sinker: 0.2,
    releaseSideFt: [2, 0.5],
    releaseHeightFt: [5.9, 0.35],
    extensionFt: [6.1, 0.35],
  },

  fastball: {
    mph: [90, 3.5],
    rpm: [2250, 170],
    /** Clock of the pitcher, from 12:00 towards the arm side: a four-seam at about 0:50. */
    tiltDeg: [25, 9],
    /** How much farther a sinker has its axis turned. */
    sinkerTurnDeg: [28, 8],
    /** Wide: a fifth of the arms cut or ride enough to be remarkable. Cut off at 0.55 and 0.995. */
    efficiency: [0.89, 0.07],
    /** From throw to throw. */
    scatter: { mph: 0.8, rpm: 55, tiltDeg: 4, efficiency: 0.02 },
  },

  /**
   * What this hand can do with the plainest grip of each family. `turnDeg`: how far the axis lies beyond the fastball's.
   * `rpmShare`: of the fastball's spin. `efficiencyMore`: beyond the fastball's. `slowerMph`: the gap. `with`: correlation of the
   * family's gift with the fastball's efficiency, over athletes. `scatter`: from throw to throw.
   */
  families: {
    /** The axis turns towards the arm side with the transverse spin kept; ten miles per hour are within reach (common practice). */
    turnover: {
      turnDeg: [30, 14], rpmShare: [0.8, 0.06], efficiencyMore: [0, 0.05], slowerMph: [9.5, 1.5], with: 0.45,
      seam: { armSide: [0, 0.004], vertical: [0, 0.004], scatter: 0.003 },
      scatter: { mph: 0.9, rpm: 90, tiltDeg: 7, efficiency: 0.03 },
    },
    /** From behind the ball: little turn, and the seams push down and to the arm side, or hardly at all. 0.01 is 0.93 in. */
    'seam-effect': {
      turnDeg: [12, 8], rpmShare: [0.8, 0.06], efficiencyMore: [-0.04, 0.06], slowerMph: [8, 1.5], with: -0.45,
      seam: { armSide: [0.018, 0.018], vertical: [-0.03, 0.024], scatter: 0.012 },
      scatter: { mph: 0.9, rpm: 85, tiltDeg: 6, efficiency: 0.03 },
    },
    /** Spin is killed, by some hands a lot; it scatters most (common practice), and has nothing to do with the fastball. */
    split: {
      turnDeg: [18, 12], rpmShare: [0.62, 0.12], efficiencyMore: [-0.07, 0.1], slowerMph: [7, 1.5], with: 0,
      seam: { armSide: [0, 0.006], vertical: [0, 0.006], scatter: 0.006 },
      scatter: { mph: 1.3, rpm: 150, tiltDeg: 10, efficiency: 0.06 },
    },
  },
  /** Factor on all scatter: exp of a normal number, one part of the athlete, one of the athlete's family. */
  steadiness: { ofAthlete: 0.15, ofFamily: 0.2 },

  /**
   * The movement that the coach wants of the changeup, whatever the family, inches; the target is this minus the fastball's. About
   * what the plans for the three families have in the middle; how far it lies from what a hand can do is chance.
   */
  target: { verticalIn: [5, 2], armSideIn: [12, 2.5], radiusIn: 3, leastDropIn: 3 },

  /** What a day does to an arm: to all throws of it, and to the feel for each family apart. */
  day: { tiltDeg: 2.5, feelTiltDeg: 2.5, feelRpm: 40 },
  /** Within a day: a slow wandering that pulls back to the middle, and tiring. The same as that of the simulated mounds. */
  withinDay: { tiltDeg: 0.4, heightM: 0.004, pull: 0.05, speedPerThrow: 0.00025, scatterPerThrow: 0.002 },
  commandDeg: 0.55,

  /** Grips and cues. Half of them do nothing at all; of the others chance decides what they do, so they help or harm. */
  idea: { nothing: 0.5, turnDeg: 9, rpmShare: 0.05, scatter: 0.15, seam: 0.008 },

  /** Standard errors of a device that tells constant acceleration and measures the axis by itself. */
  device: { speedMps: 0.017, movementM: 0.007, spinRpm: 20, axisDeg: 1.5, extensionM: 0.02 },
} as const;
