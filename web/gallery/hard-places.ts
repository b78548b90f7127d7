import type { GapView, UnexplainedReading, UnexplainedView } from '../../core/facts/views.ts';
import { inchesToM, mToInches } from '../../core/units/convert.ts';
import { drawGapLine } from '../charts/gap-line.ts';
import type { PlaneData, PlaneMark } from '../charts/plane-data.ts';
import { drawPlateView } from '../charts/plate-view.ts';
import { drawSeamMap } from '../charts/seam-map.ts';
import { drawSeparationPlane } from '../charts/separation-plane.ts';
import { gapPicture } from '../wall/asked/gap-of.ts';
import { seamMapOf, type SpinSeen } from '../wall/asked/seams-of.ts';
import { arrowOf, unexplainedWords } from '../wall/asked/unexplained-of.ts';
import { plateHeightWords, plateSideWords } from '../words/plate-words.ts';
import type { Scene } from './scene.ts';

/** Invented throws in every kind of picture, each where its names are hardest to place. */


const inches2 = (value: number): number => value * inchesToM(1) ** 2;

function seams(latitudeDeg: number | null, longitudeDeg: number, unexplained: UnexplainedReading, gyroRad: SpinSeen['gyroRad'] = 'not-sent'): Scene {
  const spin: SpinSeen = { spinRpm: 1843, tiltRad: 1.2, efficiency: 0.93, gyroRad, spinFrom: 'measured', seamAxis: latitudeDeg === null ? null : { latitudeDeg, longitudeDeg }, unexplained };
  return (svg, speech, room) => {
    const shown = seamMapOf(spin, 'one', speech);
    if (shown.kind === 'picture') drawSeamMap(svg, shown.data, room);
  };
}

/** A gap that grows to so many widths, bending as a late break does; some of its moments may be missing. At the same distance it stands off the line. */
function gap(widths: number, bend: number, decisionBasis: GapView['decisionBasis'], missing: readonly number[] = []): Scene {
  const at = (share: number): number => widths * (0.03 + 0.97 * share ** bend);
  const seen: GapView = {
    aimedArrivalS: 0.045, decisionS: 0.232, decisionBeforeS: 0.175, decisionBasis, decisionWidths: at(0.57) * (decisionBasis === 'same-time' ? 1 : 0.6), plateWidths: widths,
    lineStepS: 0.407 / 20, lineWidths: Array.from({ length: 21 }, (_, index) => (missing.includes(index) ? Number.NaN : at(index / 20))),
  };
  return (svg, speech, room) => drawGapLine(svg, { generation: 'one', ...gapPicture(seen, speech) }, room);
}

const SEEN: UnexplainedView = {
  kind: 'unexplained', spinVerticalM: 0.2, spinArmSideM: 0.2, pushM: 0.3, acrossM: 0.05, verticalM: inchesToM(-1.4), armSideM: inchesToM(3), measurement: [inches2(0.2), inches2(0.1), inches2(0.3)], model: [inches2(0.3), inches2(-0.2), inches2(0.3)],
};
const ZONE = { kind: 'ellipse', verticalM: inchesToM(-10), armSideM: inchesToM(7), verticalRadiusM: inchesToM(3), armSideRadiusM: inchesToM(3) } as const;

function mark(place: number, downIn: number, armSideIn: number, onTarget: boolean): PlaneMark {
  return { place, trial: place < 4 ? 'A' : 'B', fastball: false, inferred: false, onTarget, verticalM: inchesToM(-downIn), armSideM: inchesToM(armSideIn), said: '' };
}

function ring(radiusIn: number): { verticalM: number; armSideM: number }[] {
  return Array.from({ length: 64 }, (_, index) => {
    const t = (2 * Math.PI * index) / 64;
    return { verticalM: inchesToM(-15.5 + radiusIn * Math.cos(t)), armSideM: inchesToM(-6.5 + radiusIn * Math.sin(t)) };
  });
}

/** The plane with what spin can reach behind the target, and the arrow of what it does not explain; the last throw at that place. */
function planeWith(lastDownIn: number, lastArmSideIn: number, armSideOn: 'left' | 'right', named: boolean): Scene {
  return (svg, speech, room) => {
    const last = mark(6, lastDownIn, lastArmSideIn, false);
    const { plane, trade, wall } = speech.words;
    const data: PlaneData = {
      generation: 'one', armSideOn, cloud: [[0.01, 0], [0, -0.01], [-0.01, 0.02], [0.02, -0.02], [0, 0]], hasBaseline: true, zone: ZONE,
      marks: [mark(1, 5, 3, false), mark(2, 6.3, 4.6, false), mark(3, 8, 5.6, true), mark(4, 9, 6, true), mark(5, 11, 7.3, true), last],
      miss: null, spread: null, reach: { outline: ring(17), hole: ring(8), named: wall.reach },
      unexplained: arrowOf(SEEN, { baseline: 1, speedMps: -4, releaseShiftM: 0, arrivalS: 0.04, verticalM: last.verticalM, armSideM: last.armSideM }, named ? [unexplainedWords(SEEN, speech)] : []),
      ruling: speech.units === 'imperial' ? { perSi: mToInches(1), unit: 'in' } : { perSi: 100, unit: 'cm' },
      texts: { name: plane.name, description: '', armSide: trade.armSide, gloveSide: trade.gloveSide, down: plane.down, fastball: plane.fastball, target: trade.target, seenFrom: plane.seenFromMound },
    };
    drawSeparationPlane(svg, data, { ...room, letters: 'newest' });
  };
}

/** The plane of Bench, with grips on the zone and the way that the last throw lacks; its words must not lie under a grip. */
function graspedPlane(lastDownIn: number, lastArmSideIn: number): Scene {
  return (svg, { words: { measures, plane, trade, wall } }, room) => {
    const last = mark(6, lastDownIn, lastArmSideIn, false);
    const [downM, sideM] = [last.verticalM - ZONE.verticalM, last.armSideM - ZONE.armSideM];
    const beyond = 1 - ZONE.verticalRadiusM / Math.hypot(downM, sideM);
    drawSeparationPlane(svg, {
      generation: 'one', armSideOn: 'right', cloud: [], hasBaseline: true, zone: ZONE, marks: [mark(4, 9, 6, true), mark(5, 11, 7.3, true), last], spread: null, reach: null, unexplained: null,
      miss: { verticalM: last.verticalM, armSideM: last.armSideM, toEdgeVerticalM: -downM * beyond, toEdgeArmSideM: -sideM * beyond, words: [measures.miss('2 in', [measures.deep]), trade.armSide] },
      ruling: { perSi: mToInches(1), unit: 'in' },
      texts: { name: plane.name, description: '', armSide: trade.armSide, gloveSide: trade.gloveSide, down: plane.down, fastball: plane.fastball, target: '', seenFrom: plane.seenFromMound },
    }, { ...room, letters: 'newest', handleTexts: wall.resize, onZone: () => {} });
  };
}

/** Ten throws over the plate and the last one at that place; or the last one's place not sent. */
function plateView(lastHighIn: number, lastArmSideIn: number, armSideOn: 'left' | 'right', drawn = true): Scene {
  return (svg, speech, room) => {
    const earlier = Array.from({ length: 10 }, (_, index) => mark(index + 1, -(18 + 2.7 * index), 9 * Math.sin(index * 1.9), index % 3 === 0));
    const marks = drawn ? [...earlier, mark(11, -lastHighIn, lastArmSideIn, false)] : earlier;
    const { measures, trade, asked: { plate } } = speech.words;
    const last = marks.at(-1)!;
    const words = drawn ? [plateHeightWords(last.verticalM, speech), plateSideWords(last.armSideM, speech)] : [plate.placeMissing(measures.missing['not-sent'])];
    drawPlateView(svg, {
      generation: 'one', armSideOn, marks, aim: null, last: { drawn, words }, ruling: speech.units === 'imperial' ? { perSi: mToInches(1), unit: 'in' } : { perSi: 100, unit: 'cm' },
      texts: { name: plate.title, description: '', armSide: trade.armSide, gloveSide: trade.gloveSide },
    }, room);
  };
}

export const SEAM_SCENES: Readonly<Record<string, Scene>> = {
  'four seams a turn, with all that is known': seams(90, 0, SEEN, Math.asin(0.2)),
  'two seams a turn': seams(0, 45, { kind: 'not-sent' }),
  'held askew': seams(48, 20, { ...SEEN, measurement: null }),
  'axis alone, nothing unexplained to be seen': seams(null, 0, { kind: 'not-visible', reason: 'axis-inferred' }),
};
export const GAP_SCENES: Readonly<Record<string, Scene>> = {
  'hardly any gap': gap(0.3, 2, 'same-time'),
  'two balls': gap(2.2, 1.2, 'same-time'),
  'early and flat': gap(2, 0.6, 'same-distance'),
  'six balls': gap(6.1, 2.2, 'same-time'),
  'fourteen balls': gap(14.4, 2.2, 'same-distance'),
  'moments missing': gap(5.2, 2, 'same-time', [8, 9, 10, 15]),
};
export const PLANE_SCENES: Readonly<Record<string, Scene>> = {
  'last throw above the target': planeWith(5.5, 6.4, 'right', true),
  'last throw deep': planeWith(14.2, 8.1, 'right', true),
  'last throw beside the fastball, a left-hander': planeWith(1.2, 2.4, 'left', true),
  'arrow without words': planeWith(5.5, 6.4, 'left', false),
};
export const GRASPED_SCENES: Readonly<Record<string, Scene>> = {
  'deep, under the grip of its height': graspedPlane(14, 7.4),
  'beside the grip of its width': graspedPlane(10.4, 12),
  'deep, arm side': graspedPlane(13, 10.4),
};
export const PLATE_SCENES: Readonly<Record<string, Scene>> = {
  'over the middle': plateView(30, 0.2, 'left'),
  'in the dirt': plateView(0.8, 11, 'left'),
  'high and far off': plateView(71, -38, 'right'),
  'beyond the picture': plateView(40, 90, 'right'),
  'last place not sent': plateView(0, 0, 'left', false),
};
