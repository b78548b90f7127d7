import { EFFICIENCY_HIGH, EFFICIENCY_LOW } from '../../core/coaching/fastball-efficiency.ts';
import { drawDifference } from '../charts/difference-line.ts';
import { drawEfficiencyScale, type EfficiencyScaleData } from '../charts/efficiency-scale.ts';
import { drawGapPair, type PairedGap } from '../charts/gap-pair.ts';
import { drawPaceRail } from '../charts/pace-rail.ts';
import { drawSessionStrip } from '../charts/session-strip.ts';
import { drawTiltClock } from '../charts/tilt-clock.ts';
import { drawTrend } from '../charts/trend.ts';
import { movementIn, movementText, MOVEMENT_UNIT, millisecondsText, speedIn, speedText, SPEED_UNIT } from '../words/numbers.ts';
import { BAND, FASTBALL_MPS, inventedMarks, inventedSpeeds, likeChance } from './invented.ts';
import type { Scene, Scenes } from './scene.ts';

const rail = (count: number, banded = true): Scene => (svg, speech, room) => {
  const { rail: say } = speech.words.wall;
  const throws = inventedSpeeds(count).slice(-12);
  const last = throws.at(-1);
  drawPaceRail(svg, {
    generation: 'one', throws,
    fastball: count === 0 && !banded ? null : { speedMps: FASTBALL_MPS, spreadMps: 0.4, words: [say.fastball, speedText(FASTBALL_MPS, speech)] },
    target: banded ? { ...BAND, words: [say.target] } : null,
    last: last === undefined ? null : { speedMps: last.speedMps, words: [speedText(last.speedMps, speech), ...(last.fastball ? [] : [speech.words.measures.later(millisecondsText(0.044, speech))])] },
    ruling: { perSi: speedIn(speech.units, 1), unit: SPEED_UNIT[speech.units] },
    texts: { name: say.name, description: say.description(count === 0 ? say.empty : '') },
  }, room);
};
export const RAILS: Scenes = { 'no baseline yet': rail(0, false), empty: rail(0), few: rail(3), many: rail(200), 'no band': rail(12, false), stale: rail(12) };

const trend = (count: number, holes: readonly number[] = []): Scene => (svg, speech, room) => {
  const chance = likeChance(count + 3);
  const values = Array.from({ length: count }, (_, index) => ({ place: index + 1, value: holes.includes(index) ? null : 8 + 4 * chance(), onTarget: holes.includes(index) ? null : chance() > 0.4 }));
  const windows = [3, 5, 10].filter((size) => count >= size).map((size) => ({ size, mean: 10, low: 10 - 6 / Math.sqrt(size), high: 10 + 6 / Math.sqrt(size) }));
  const title = speech.words.wall.windows.vertical;
  drawTrend(svg, { generation: 'one', values, windows, spoken: windows.at(-1)?.size ?? 3, target: { low: 8, high: 12 }, texts: { name: title, description: title } }, { ...room, throws: 10, markPx: Math.max(4, room.textPx * 0.3) });
};
export const TRENDS: Scenes = { empty: trend(0), few: trend(3), many: trend(200), 'throws missing': trend(10, [4, 5]) };

const difference = (ofM: number, eitherM: number): Scene => (svg, speech, room) => {
  const say = speech.words.trials.verdict;
  const inUnit = (metres: number): number => movementIn(speech.units, metres);
  const smallestM = 0.025;
  drawDifference(svg, {
    difference: inUnit(ofM), low: inUnit(ofM - eitherM), high: inUnit(ofM + eitherM), shrunken: inUnit(ofM * 0.7), smallest: inUnit(smallestM), ruling: { perSi: 1, unit: MOVEMENT_UNIT[speech.units] },
    texts: { name: say.line, description: '', less: say.better('B'), more: say.worse('B'), small: say.small(movementText(smallestM, speech)) },
  }, room);
};
export const DIFFERENCES: Scenes = { settled: difference(-0.08, 0.03), 'no difference that matters': difference(0.004, 0.012), 'not settled': difference(0.03, 0.07) };

const efficiency = (known: EfficiencyScaleData['efficiency']): Scene => (svg, { words: { plan: { frame: { scale } } } }, room) =>
  drawEfficiencyScale(svg, { efficiency: known, marks: [EFFICIENCY_LOW, EFFICIENCY_HIGH], texts: { name: scale.name, description: '', below: scale['seam-effect'], between: scale.between, above: scale.turnover } }, room);
export const EFFICIENCIES: Scenes = { 'not known': efficiency(null), 'below both marks': efficiency({ mean: 0.8, low: 0.77, high: 0.83 }), 'across a mark': efficiency({ mean: 0.94, low: 0.9, high: 0.97 }) };

const clock = (count: number): Scene => (svg, speech, room) => {
  const chance = likeChance(count + 11);
  const [aimRad, giveRad] = [1.9, 0.35];
  const tilts = Array.from({ length: count }, (_, index) => {
    const tiltRad = aimRad + 1.4 * (chance() - 0.5);
    return { place: index + 1, tiltRad, within: Math.abs(tiltRad - aimRad) <= giveRad };
  });
  drawTiltClock(svg, { aimRad, giveRad, tilts, texts: { name: speech.words.aims.tilt, description: '' } }, room);
};
export const CLOCKS: Scenes = { empty: clock(0), few: clock(3), many: clock(200) };

const strip = (count: number): Scene => (svg, { words }, room) => {
  const marks = inventedMarks(count);
  const atMs = (index: number): number => 9000 * (index + 1) + (index > count / 2 ? 20_000 : 0);
  drawSessionStrip(svg, {
    lengthMs: atMs(count) + 9000,
    throws: marks.map(({ place, trial, onTarget }, index) => ({ place, atMs: atMs(index), letter: trial, fastball: index % 6 === 5, onTarget, excluded: index === 3, bookmarked: index === 2, noted: index === 4, held: index === 1 })),
    notes: count === 0 ? [] : [{ atMs: 30_000 }],
    folded: count < 4 ? [] : [{ fromMs: atMs(Math.floor(count / 2)) + 4000, toMs: atMs(Math.floor(count / 2)) + 20_000, said: words.playback.quietFor('4:10') }],
    part: count < 4 ? null : { fromMs: 18_000, toMs: 54_000 },
  }, { ...room, insetPx: 10 });
};
export const STRIPS: Scenes = { empty: strip(0), few: strip(3), some: strip(24), many: strip(200) };

const pair = (widths: readonly [number, number]): Scene => (svg, { words: { asked: { gapLine }, playback: { against } } }, room) => {
  const gaps = widths.map((most, index): PairedGap => ({
    letter: index === 0 ? 'A' : 'B', form: index === 0 ? 'square' : 'round', decisionS: 0.23, decisionWidths: most * 0.3,
    line: Array.from({ length: 21 }, (_, step) => [step * 0.02, most * (step / 20) ** 2] as const),
  }));
  drawGapPair(svg, { gaps, texts: { name: against.gap, description: '', milliseconds: 'ms', afterRelease: gapLine.afterRelease, widths: against.widthsAxis, decision: gapLine.decision } }, room);
};
export const PAIRS: Scenes = { 'far apart': pair([2, 6]), 'hardly apart': pair([3.1, 3.4]) };
