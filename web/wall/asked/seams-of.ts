import type { MoundView, ThrowView } from '../../../core/facts/views.ts';
import { seamAround } from '../../../core/flight/seam-curve.ts';
import { degToRad } from '../../../core/units/convert.ts';
import { passes } from '../../charts/seam-geometry.ts';
import type { SeamMapData } from '../../charts/seam-map.ts';
import { spinText } from '../../words/numbers.ts';
import type { Speech } from '../../words/speech.ts';
import { lastThrow } from '../last-throw.ts';
import { inWords, type Shown } from './shown.ts';
import { unexplainedWords } from './unexplained-of.ts';

/** What is known of the spin of a throw. */
export type SpinSeen = Pick<ThrowView, 'spinRpm' | 'tiltRad' | 'efficiency' | 'gyroRad' | 'spinFrom' | 'seamAxis' | 'unexplained'>;

/** Points of the drawn seam: 3° apart and less. */
const SEAM_POINTS = 216;

/** The seam map of the last throw. */
export function seamsOf(view: MoundView, speech: Speech): Shown<SeamMapData> {
  const { words } = speech;
  const thrown = lastThrow(view);
  if (thrown === null) return inWords(words.plane.noThrow);
  if (thrown.excluded !== null) return inWords(words.trade.excluded);
  const data = seamMapOf(thrown, `${view.session?.id} ${view.generation}`, speech);
  return view.session?.trial ? withoutHidden(data, thrown) : data;
}

/** The map of one ball: with its seam, with its axis alone, or in words that even that is not known. */
export function seamMapOf(seen: SpinSeen, generation: string, speech: Speech): Shown<SeamMapData> {
  const { measures, asked: { seamMap: say } } = speech.words;
  const { spinRpm, tiltRad, efficiency, gyroRad, spinFrom, seamAxis, unexplained } = seen;
  if (seamAxis === null && typeof tiltRad !== 'number' && typeof efficiency !== 'number') return inWords(say.axisMissing(measures.missing[tiltRad]));
  const seam = seamAxis === null ? null : seamAround({ latitudeRad: degToRad(seamAxis.latitudeDeg), longitudeRad: degToRad(seamAxis.longitudeDeg) }, SEAM_POINTS);
  // Gyro is positive where the axis points along the flight, so the front is that much nearer to its end.
  const frontFromAxisRad = typeof gyroRad === 'number' ? Math.PI / 2 - gyroRad : null;
  const turning = typeof spinRpm === 'number' ? say.axisTurning(spinText(spinRpm, speech)) : say.axis;
  const axis = spinFrom === 'inferred' && seamAxis === null ? say.axisInferred(turning) : turning;
  const doubted = { drawn: unexplained.kind === 'unexplained', words: unexplainedWords(unexplained, speech) };
  const told = [`${axis}.`, say.turns, seam === null ? `${say.axisAlone}.` : ringWords(say, frontFromAxisRad, passes(seam, frontFromAxisRad ?? Math.PI / 2).length), `${doubted.words}.`, ...whyHidden(unexplained, speech)];
  return {
    kind: 'picture',
    data: {
      generation, seam, frontFromAxisRad,
      spinRpm: typeof spinRpm === 'number' ? spinRpm : null,
      unexplained: doubted,
      texts: { name: say.title, description: say.description(told.join(' ')), axis, farSide: say.farSide, seams: say.seams, axisAlone: say.axisAlone },
    },
  };
}

/** What the drawn ring meets: it is the way of the ball's front, or where that is not known the equator of the spin. */
function ringWords(say: Speech['words']['asked']['seamMap'], frontFromAxisRad: number | null, count: number): string {
  return (frontFromAxisRad === null ? say.passing : say.frontPassing)(say.seams(count));
}

/** Below the map of a trial stands whether it shows a seam effect: who cannot see it need not be told twice. */
function withoutHidden(shown: Shown<SeamMapData>, { unexplained }: SpinSeen): Shown<SeamMapData> {
  return shown.kind === 'picture' && unexplained.kind === 'not-visible' ? { ...shown, data: { ...shown.data, unexplained: null } } : shown;
}

/** Why a device cannot show unexplained movement, in a sentence of its own. */
function whyHidden(unexplained: ThrowView['unexplained'], { words }: Speech): string[] {
  return unexplained.kind === 'not-visible' ? [words.asked.seamMap.hiddenBecause[unexplained.reason]] : [];
}
