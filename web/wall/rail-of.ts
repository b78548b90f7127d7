import type { MoundView, Reading, ThrowView } from '../../core/facts/views.ts';
import type { RailData, RailThrow } from '../charts/pace-rail.ts';
import { speedIn, speedText, SPEED_UNIT } from '../words/numbers.ts';
import type { Speech } from '../words/speech.ts';
import { arrivalWords, bandWords, paceWords } from '../words/throw-words.ts';

/** How many throws the rail shows. */
const RAIL_THROWS = 12;

/** The pace rail of a view: the last throws of the stage that is thrown now, excluded ones and those of unknown speed left out. */
export function railOf(view: MoundView, speech: Speech): RailData {
  const { session } = view;
  const { rail } = speech.words.wall;
  const baseline = session?.baseline.kind === 'baseline' ? session.baseline : null;
  const band = session?.speedBand ?? null;
  const shown = view.throws.filter(({ stage, excluded }) => stage === session?.stage && excluded === null);
  const throws = shown.flatMap(({ place, speedMps, fastball, miss, separation }): RailThrow[] => (typeof speedMps !== 'number' ? [] : [{
    place, speedMps, fastball, onPace: fastball ? null : miss?.paceOnTarget ?? paceInBand(separation?.speedMps, band),
  }])).slice(-RAIL_THROWS);
  const last = shown.findLast(({ place }) => place === throws.at(-1)?.place) ?? null;
  const arrival = last === null ? null : arrivalOf(last);
  const later = arrival === null ? [] : typeof arrival === 'number' ? [arrivalWords(arrival, speech), ...workedOutFrom(last!, speech)] : [rail.arrivalUnknown];
  const lastWords = last === null || typeof last.speedMps !== 'number' ? [] : [speedText(last.speedMps, speech), ...later];
  const unknownWhy = typeof arrival === 'string' ? [speech.words.measures.missing[arrival]] : [];
  const gap = last === null || last.fastball ? undefined : last.separation?.speedMps;
  const gapWords = typeof gap !== 'number' ? [] : [paceWords(gap, speech), ...(band === null ? [] : [bandWords(gap, band, speech)])];
  return {
    generation: `${view.mound} ${session?.id} ${session?.stage} ${view.generation}`,
    fastball: baseline === null ? null : { speedMps: baseline.speedMps, spreadMps: Math.max(0.2, baseline.speedSpreadMps), words: [rail.fastball, speedText(baseline.speedMps, speech)] },
    target: baseline === null || band === null ? null : { lowMps: baseline.speedMps + band.lowMps, highMps: baseline.speedMps + band.highMps, words: [rail.target] },
    throws,
    last: last === null || typeof last.speedMps !== 'number' ? null : { speedMps: last.speedMps, words: lastWords },
    ruling: { perSi: speedIn(speech.units, 1), unit: SPEED_UNIT[speech.units] },
    texts: {
      name: rail.name,
      description: rail.description(lastWords.length === 0 ? rail.empty : [...lastWords, ...unknownWhy, ...gapWords].join(', ')),
    },
  };
}

/** When a throw arrives after the fastball aimed at the same place; where its path is not seen, after the fastball. Null where nothing is held against the fastball. */
function arrivalOf({ fastball, separation, gap }: ThrowView): Reading | null {
  if (fastball || separation === null) return null;
  return typeof gap === 'object' && gap !== null ? gap.aimedArrivalS : separation.arrivalS;
}

/** What the arrival gap was worked out from, where nobody saw the ball arrive. */
function workedOutFrom({ gap, flightTimeFrom }: ThrowView, { words: { wall: { rail } } }: Speech): string[] {
  if (typeof gap === 'object' && gap !== null) return [];
  return flightTimeFrom === 'speed' ? [rail.fromSpeed] : flightTimeFrom === 'spin' ? [rail.fromSpin] : [];
}

function paceInBand(gapMps: unknown, band: { readonly lowMps: number; readonly highMps: number } | null): boolean | null {
  return typeof gapMps !== 'number' || band === null ? null : gapMps >= band.lowMps && gapMps <= band.highMps;
}
