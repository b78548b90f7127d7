import { inchesToM } from '../../core/units/convert.ts';
import { drawLetteredPlane, type LetteredMark } from '../charts/lettered-plane.ts';
import type { PlaneData, PlaneMark, PlaneMiss } from '../charts/plane-data.ts';
import { drawSeparationPlane } from '../charts/separation-plane.ts';
import { planeNames } from '../wall/plane-of.ts';
import { movementRuling, movementText } from '../words/numbers.ts';
import type { Speech } from '../words/speech.ts';
import { inventedMarks, ZONE } from './invented.ts';
import type { Scene, Scenes } from './scene.ts';

const CLOUD = [[0.01, 0], [0, -0.01], [-0.01, 0.02], [0.02, -0.02], [0, 0]] as const;

function planeData(marks: readonly PlaneMark[], speech: Speech, unlike: Partial<PlaneData> = {}): PlaneData {
  const { plane } = speech.words;
  return {
    generation: 'one', armSideOn: 'right', cloud: CLOUD, hasBaseline: true, zone: ZONE, marks, miss: missOf(marks.at(-1), speech), spread: null, reach: null, unexplained: null, ruling: movementRuling(speech.units),
    texts: { name: plane.name, description: plane.description(marks.length === 0 ? plane.empty : plane.marks(marks.length, marks.filter(({ onTarget }) => onTarget === true).length)), ...planeNames(speech) },
    ...unlike,
  };
}

/** From the last throw straight to the edge of the round zone. */
function missOf(last: PlaneMark | undefined, speech: Speech): PlaneMiss | null {
  if (last === undefined || last.onTarget !== false) return null;
  const [down, side] = [last.verticalM - ZONE.verticalM, last.armSideM - ZONE.armSideM];
  const far = Math.hypot(down, side);
  const beyond = 1 - ZONE.verticalRadiusM / far;
  return { ...last, toEdgeVerticalM: -down * beyond, toEdgeArmSideM: -side * beyond, words: [movementText(far - ZONE.verticalRadiusM, speech)] };
}

const plane = (count: number, unlike: (speech: Speech) => Partial<PlaneData> = () => ({}), inferred = false): Scene =>
  (svg, speech, room) => drawSeparationPlane(svg, planeData(inventedMarks(count, inferred), speech, unlike(speech)), { ...room, letters: 'newest' });

const spread = ({ words }: Speech): Partial<PlaneData> => ({ spread: { verticalM: inchesToM(-9.5), armSideM: inchesToM(6.5), semiMajorM: inchesToM(3.4), semiMinorM: inchesToM(2), angleRad: 0.5, named: words.plane.spread(10) } });

export const PLANES: Scenes = {
  empty: plane(0),
  'no baseline yet': plane(0, () => ({ hasBaseline: false, cloud: [], zone: null })),
  'no target': plane(8, () => ({ zone: null, miss: null, marks: inventedMarks(8).map((mark) => ({ ...mark, onTarget: null })) })),
  few: plane(3),
  'a left-hander, with the spread': plane(12, (speech) => ({ armSideOn: 'left', ...spread(speech) })),
  many: plane(200),
  inferred: plane(12, () => ({}), true),
  stale: plane(12),
};

const lettered = (count: number): Scene => (svg, speech, room) => {
  const marks = inventedMarks(count).map((mark): LetteredMark => ({ ...mark, letter: mark.trial!, form: mark.trial === 'A' ? 'square' : 'round' }));
  drawLetteredPlane(svg, { plane: planeData(marks, speech), marks, spreads: [null, spread(speech).spread ?? null] }, room);
};

export const LETTERED_PLANES: Scenes = { empty: lettered(0), few: lettered(6), many: lettered(200) };
