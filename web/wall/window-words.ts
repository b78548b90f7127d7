import type { Estimate, MoundView, SeparationView, ThrowView, WindowView } from '../../core/facts/views.ts';
import type { TrendData, TrendWindow } from '../charts/trend.ts';
import { movementIn, MOVEMENT_UNIT, numberText, shareText, speedIn, SPEED_UNIT } from '../words/numbers.ts';
import type { Speech } from '../words/speech.ts';

/** One small trend: what it is called, what the newest full window says, and its picture. */
export interface WindowTrend {
  readonly key: 'vertical' | 'armSide' | 'pace' | 'onTarget';
  readonly title: string;
  readonly value: string;
  readonly trend: TrendData | null;
}

/** The throws that windows are made of: those of the trial that is worked on, of this stage, held against a baseline. */
export function windowThrows({ session, throws }: MoundView): ThrowView[] {
  if (session === null) return [];
  const ofTrial = ({ trial, intent }: ThrowView): boolean =>
    session.trial === null ? trial === null && intent !== null && intent === session.intent : trial === session.trial.letter;
  return throws.filter((thrown) => !thrown.fastball && thrown.stage === session.stage && thrown.excluded === null && thrown.separation !== null && ofTrial(thrown));
}

/** The newest window that is full: of ten, five or three throws; else that of three. */
export function spokenWindow(windows: readonly WindowView[]): WindowView | null {
  const full = ([10, 5, 3] as const).map((size) => windows.find((window) => window.size === size && window.count >= size)).find((window) => window !== undefined);
  return full ?? windows.find(({ size }) => size === 3) ?? null;
}

/** Which throws the spoken window holds: how many, and of which trial or intent. */
export function windowOf({ session }: MoundView, { words }: Speech): { readonly last: string; readonly trial: string } {
  const size = session === null ? null : spokenWindow(session.windows)?.size ?? null;
  if (session === null || typeof size !== 'number') return { last: '', trial: '' };
  const trial = session.trial === null ? (session.intent === null ? words.trade.noIntent : words.trade.intent[session.intent]) : words.trade.trial(session.trial.letter);
  return { last: words.wall.windows.lastOf(size), trial };
}

/** The windows of a view as small trends, in the order in which they are read. */
export function windowTrends(view: MoundView, speech: Speech): WindowTrend[] {
  const { session } = view;
  const spoken = session === null ? null : spokenWindow(session.windows);
  if (session === null || spoken === null) return [];
  const say = speech.words.wall.windows;
  const { zone, speedBand } = session;
  const movement = (metres: number): number => movementIn(speech.units, metres);
  const speed = (mps: number): number => speedIn(speech.units, mps);
  const trend = (key: WindowTrend['key'], title: string, of: (separation: SeparationView) => number | string, estimate: (window: WindowView) => Estimate, convert: (si: number) => number, unit: string, target: TrendData['target']): WindowTrend => {
    const value = estimateText(estimate(spoken), convert, unit, speech);
    return { key, title, value, trend: { ...trendOf(view, of, estimate), target, texts: { name: title, description: value } } };
  };
  const { verticalM, armSideM, speedMps, onTarget } = spoken;
  return [
    trend('vertical', meanOf(verticalM) > 0 ? say.verticalUp : say.vertical, (separation) => separation.verticalM, (window) => window.verticalM, movement, MOVEMENT_UNIT[speech.units],
      zone === null ? null : { low: zone.verticalM - zone.verticalRadiusM, high: zone.verticalM + zone.verticalRadiusM }),
    trend('armSide', meanOf(armSideM) < 0 ? say.gloveSide : say.armSide, (separation) => separation.armSideM, (window) => window.armSideM, movement, MOVEMENT_UNIT[speech.units],
      zone === null ? null : { low: zone.armSideM - zone.armSideRadiusM, high: zone.armSideM + zone.armSideRadiusM }),
    trend('pace', meanOf(speedMps) > 0 ? say.paceFaster : say.pace, (separation) => separation.speedMps, (window) => window.speedMps, speed, SPEED_UNIT[speech.units],
      speedBand === null ? null : { low: speedBand.lowMps, high: speedBand.highMps }),
    { key: 'onTarget', title: say.onTarget, value: shareWords(onTarget, speech), trend: null },
  ];
}

function trendOf(view: MoundView, of: (separation: SeparationView) => number | string, estimate: (window: WindowView) => Estimate): Pick<TrendData, 'generation' | 'values' | 'windows' | 'spoken'> {
  const values = windowThrows(view).map(({ place, separation, miss }) => {
    const value = of(separation!);
    return { place, value: typeof value === 'number' ? value : null, onTarget: miss?.onTarget ?? null };
  });
  const windows = view.session!.windows.flatMap((window): TrendWindow[] => {
    const known = estimate(window);
    return window.size === 'all' || known.kind !== 'estimate' ? [] : [{ size: window.size, mean: known.mean, low: known.low, high: known.high }];
  });
  return { generation: `${view.session?.id} ${view.session?.trial?.letter} ${view.generation}`, values, windows, spoken: Number(spokenWindow(view.session!.windows)?.size) };
}

function meanOf(estimate: Estimate): number {
  return estimate.kind === 'estimate' ? estimate.mean : 0;
}

function estimateText(estimate: Estimate, convert: (si: number) => number, unit: string, { words, language }: Speech): string {
  if (estimate.kind === 'too-few') return words.measures.tooFew(estimate.count, estimate.need);
  const either = convert(estimate.high - estimate.low) / 2;
  const decimals = unit === 'in' || unit === 'mph' ? 1 : 0;
  return `${numberText(Math.abs(convert(estimate.mean)), decimals, language)} ± ${numberText(either, decimals, language)} ${unit}`;
}

function shareWords(share: WindowView['onTarget'], speech: Speech): string {
  const { measures } = speech.words;
  switch (share.kind) {
    case 'no-zone': return measures.noZone;
    case 'too-few': return measures.tooFew(share.count, share.need);
    case 'share': return `${measures.hits(share.hits, share.count)}, ${shareText(share.low, speech).replace(/\s*%/, '')}–${shareText(share.high, speech)}`;
  }
}
