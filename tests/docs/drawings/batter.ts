import { stateAtTime, stateAtY, type ConstantAcceleration } from '../../../core/flight/constant-acceleration.ts';
import { apartAtDecision, decisionBeforeS } from '../../../core/flight/decision-point.ts';
import { ballWidthM, gapLine } from '../../../core/flight/gap-line.ts';
import { inchM } from '../../core/flight/feet-and-miles.ts';
import { curve, dot, line, say, tell, type Drawing, type Px } from './svg.ts';
import { aimedFast, aimedFastArrivalS, feet, slowFlight, slowPath } from './thrown.ts';

const decisionS = aimedFastArrivalS - decisionBeforeS.usual;
const ms = (seconds: number): string => `${Math.round(1000 * seconds)} ms`;

/** Both balls every 50 ms on their way, and where the slow one is when the fast one arrives. */
export function arrivalGap(): Drawing {
  const x = (yM: number): number => 30 + (55 - feet(yM)) * 13;
  const rows = [{ path: aimedFast, y: 70, kind: 'fastball' }, { path: slowPath, y: 150, kind: 'work' }] as const;
  const shortFt = feet(stateAtTime(slowPath, aimedFastArrivalS).positionM[1] - 17 * inchM);
  const at = (path: ConstantAcceleration, timeS: number): number => x(stateAtTime(path, timeS).positionM[1]);
  const plateX = x(17 * inchM);
  return {
    width: 800, height: 262,
    title: 'Fastball and changeup on their way to the plate, a mark every 50 ms: when the fastball arrives the changeup is still feet away, and that is the arrival gap.',
    parts: [
      line([plateX, 40], [plateX, 190], 'line'),
      say([plateX, 30], 'front of the plate', 'quiet', 'middle'),
      ...rows.flatMap(({ path, y, kind }) => [
        line([x(55 * 0.3048), y], [plateX, y], 'line'),
        ...everyFifty(stateAtY(path, 17 * inchM)!.timeS).map((timeS) => dot([at(path, timeS), y], 6, kind)),
        dot([at(path, decisionS), y], 6, `${kind} full`),
      ]),
      dot([plateX, 70], 6, 'fastball full'),
      dot([at(slowPath, aimedFastArrivalS), 150], 6, 'attention full'),
      say([30, 52], 'fastball, 95 mph', 'quiet'),
      say([30, 132], 'changeup, 85 mph', 'quiet'),
      say([at(aimedFast, decisionS), 52], 'decision', 'quiet', 'middle'),
      line([at(aimedFast, decisionS), 80], [at(slowPath, decisionS), 140], 'quiet dotted'),
      line([plateX, 80], [at(slowPath, aimedFastArrivalS), 140], 'attention dotted'),
      tell([at(slowPath, aimedFastArrivalS), 184], [`${shortFt.toFixed(1)} ft short of the plate`, `arrives ${ms(slowFlight.end.timeS - aimedFastArrivalS)} later`], '', 'middle'),
      say([30, 242], 'one mark every 50 ms; filled: the decision point, 175 ms before the fastball arrives', 'quiet'),
    ].toSorted((a, b) => Number(a.startsWith('<text')) - Number(b.startsWith('<text'))),
  };
}

function everyFifty(arrivalS: number): number[] {
  return Array.from({ length: 1 + Math.floor(arrivalS / 0.05) }, (_, i) => i * 0.05);
}

/** The gap between the pair over the time from release, in balls. */
export function gapOverTime(): Drawing {
  const { stepS, apart } = gapLine(slowPath, aimedFast)!;
  const { widths } = apartAtDecision(slowPath, aimedFast)!;
  const last = apart.at(-1)!.widths;
  const x = (timeS: number): number => 70 + timeS * 1330;
  const perWidth = 72;
  const y = (count: number): number => 274 - count * perWidth;
  return {
    width: 800, height: 334,
    title: 'Gap line: the distance between changeup and fastball in ball widths over the time from release, counted in balls that stand on each other at the decision point and when the fastball is at the plate.',
    parts: [
      line([60, y(0)], [x(aimedFastArrivalS) + 40, y(0)], 'line'),
      ...[0, 100, 200, 300, 400].map((at) => say([x(at / 1000), y(0) + 22], `${at} ms`, 'quiet', 'middle')),
      ...stacked(x(decisionS), y, widths, perWidth),
      ...stacked(x(aimedFastArrivalS), y, last, perWidth),
      curve(apart.map((each, i): Px => [x(i * stepS), y(each.widths)]), 'work thick'),
      dot([x(decisionS), y(widths)], 5, 'work full'),
      dot([x(aimedFastArrivalS), y(last)], 5, 'work full'),
      tell([x(decisionS) - 44, y(widths) - 24], ['decision point', `${widths.toFixed(1)} ball widths, ${(widths * ballWidthM / inchM).toFixed(1)} in`], '', 'end'),
      tell([x(aimedFastArrivalS) + 44, y(last) - 14], ['fastball', 'at the plate', `${last.toFixed(1)} ball widths,`, `${(last * ballWidthM / inchM).toFixed(1)} in`]),
      say([70, 320], 'after release, at the same time; fastball aimed at the changeup’s plate place', 'quiet'),
    ],
  };
}

/** As many balls on each other as the gap is wide; the last one is cut by the line. */
function stacked(x: number, y: (widths: number) => number, widths: number, perWidth: number): string[] {
  return Array.from({ length: Math.ceil(widths) }, (_, i) => dot([x, y(i + 0.5)], perWidth / 2, 'line'));
}
