import { missOf } from '../../core/coaching/target.ts';
import type { TargetZone } from '../../core/facts/coach.ts';
import type { TakenThrow } from '../../core/session/compared.ts';
import { FEWEST_FOR_SPREAD } from '../../core/session/windows.ts';
import { ellipse } from '../../core/statistics/ellipse.ts';
import type { PlaneSpread } from '../charts/plane-data.ts';
import type { LetteredMark, LetteredPlaneData } from '../charts/lettered-plane.ts';
import { planeNames } from '../wall/plane-of.ts';
import { movementRuling } from '../words/numbers.ts';
import type { Speech } from '../words/speech.ts';
import { sideWords, verticalWords } from '../words/throw-words.ts';
import type { Names } from './names.ts';
import type { FoldedSession } from './record.ts';
import type { TrialRow } from './rows.ts';

/** One throw as the plane needs it; excluded ones are not drawn. */
interface CloudThrow {
  readonly place: number;
  readonly number: number;
  readonly of: 'a' | 'b';
  readonly verticalM: number;
  readonly armSideM: number;
  readonly inferred: boolean;
}

export function cloudOfTaken(taken: readonly TakenThrow[]): readonly CloudThrow[] {
  return taken.filter(({ excluded }) => !excluded).map(({ trial, ...thrown }) => ({ ...thrown, of: trial }));
}

/** Two trials that were not compared, each against the baselines of its own session. */
export function cloudOfRows(a: TrialRow, b: TrialRow): readonly CloudThrow[] {
  return ([['a', a], ['b', b]] as const).flatMap(([of, row]) => row.throws.flatMap(({ number, separation, excluded, inferred }): CloudThrow[] => {
    if (separation === null || excluded !== null) return [];
    const { verticalM, armSideM } = separation;
    return typeof verticalM !== 'number' || typeof armSideM !== 'number' ? [] : [{ place: number, number, of, verticalM, armSideM, inferred }];
  })).map((thrown, index) => ({ ...thrown, place: index + 1 }));
}

/** Both clouds over the fastball of the newer session and the target. */
export function cloudsData(thrown: readonly CloudThrow[], zone: TargetZone | null, newer: FoldedSession, names: Names, letters: Names, speech: Speech): LetteredPlaneData {
  const { trade, trials: { pair } } = speech.words;
  const { baseline, athlete } = newer.shown;
  const marks = thrown.map((one): LetteredMark => {
    const { place, of, verticalM, armSideM, inferred } = one;
    const moved = `${verticalWords(verticalM, speech, 1)}, ${sideWords(armSideM, speech, 1)}`;
    const onTarget = zone === null ? null : missOf(one, zone).onTarget;
    return { place, form: of === 'a' ? 'square' : 'round', letter: letters[of], trial: letters[of], verticalM, armSideM, inferred, onTarget, fastball: false, said: `${trade.throwNumber(one.number)}, ${names[of]}: ${moved}` };
  });
  const ofTrial = (of: 'a' | 'b'): LetteredMark[] => marks.filter((_, index) => thrown[index]!.of === of);
  const hits = (of: 'a' | 'b'): number => ofTrial(of).filter(({ onTarget }) => onTarget === true).length;
  const count = (of: 'a' | 'b'): number => ofTrial(of).length;
  return {
    marks,
    spreads: [spreadOf(thrown, 'a', names.a, speech), spreadOf(thrown, 'b', names.b, speech)],
    plane: {
      generation: '',
      armSideOn: athlete.hand,
      cloud: baseline.kind === 'baseline' ? baseline.cloud : [],
      hasBaseline: true,
      zone,
      ruling: movementRuling(speech.units),
      texts: {
        name: pair.plane,
        description: pair.planeSays(names.a, count('a'), hits('a'), names.b, count('b'), hits('b')),
        ...planeNames(speech),
      },
    },
  };
}

function spreadOf(thrown: readonly CloudThrow[], of: 'a' | 'b', name: string, { words }: Speech): PlaneSpread | null {
  const pairs = thrown.filter((one) => one.of === of).map(({ armSideM, verticalM }) => [armSideM, verticalM] as const);
  const found = pairs.length < FEWEST_FOR_SPREAD ? null : ellipse('throws', pairs);
  if (found === null) return null;
  const { centre: [armSideM, verticalM], semiMajor, semiMinor, angleRad } = found;
  return { armSideM, verticalM, semiMajorM: semiMajor, semiMinorM: semiMinor, angleRad, named: words.trials.pair.ellipse(name, pairs.length) };
}
