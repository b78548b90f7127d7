import type { ThrowView } from '../../core/facts/views.ts';
import { sessionIn } from '../../core/session/ledger.ts';
import { throwMarks } from '../../core/session/throw-marks.ts';
import { FOLDED_QUIET_MS, QUIET_AFTER_MS } from '../../core/session/timeline.ts';
import type { FoldedQuiet, SessionStripData, StripThrow } from '../charts/strip-scale.ts';
import type { PlaybackState } from '../live/playback.ts';
import { lengthText } from '../words/moments.ts';
import type { Speech } from '../words/speech.ts';
import { missWords, whatWords } from '../words/throw-words.ts';

/** Folded quiet of this length and more is told beside the track. House rule. */
const TOLD_FROM_MS = 120_000;

/** The whole session along its timeline, as it is known by now. */
export function stripOf({ checkpoints, recording, foldQuiet }: Pick<PlaybackState, 'checkpoints' | 'recording' | 'foldQuiet'>, { part, held }: { readonly part: SessionStripData['part']; readonly held: number | null }, speech: Speech): SessionStripData {
  const { timelineMs, arrivedMs } = recording;
  const { notes } = sessionIn(checkpoints.newest, checkpoints.session)!;
  const noted = new Set(notes.flatMap(({ place }) => place ?? []));
  const at = (applied: number | undefined): number => timelineMs[(applied ?? timelineMs.length) - 1] ?? 0;
  return {
    lengthMs: timelineMs.at(-1) ?? 0,
    throws: throwMarks(checkpoints.newest, checkpoints.session).map(({ place, trial, ...mark }): StripThrow => ({
      place, letter: trial, ...mark,
      atMs: at(checkpoints.entersAt.get(place)),
      noted: noted.has(place), held: place === held,
    })).sort((a, b) => a.atMs - b.atMs),
    notes: checkpoints.facts.flatMap(({ said }, index) => (said.kind === 'note-written' && said.session === checkpoints.session && said.place === null ? [{ atMs: timelineMs[index]! }] : [])),
    folded: foldQuiet ? foldedIn(arrivedMs, timelineMs, speech) : [],
    part,
  };
}

/** "Throw 12, Changeup A, 2 in short". */
export function tickWords(thrown: ThrowView, speech: Speech): string {
  const { trade } = speech.words;
  const how = thrown.excluded !== null ? [trade.excluded] : thrown.fastball || thrown.miss === null ? [] : [missWords(thrown.miss, speech)];
  return [trade.throwNumber(thrown.number), whatWords(thrown, speech), ...how].join(', ');
}

function foldedIn(arrivedMs: readonly number[], timelineMs: readonly number[], { words }: Speech): FoldedQuiet[] {
  return arrivedMs.slice(1).flatMap((atMs, index) => {
    const lastedMs = atMs - arrivedMs[index]!;
    if (lastedMs <= QUIET_AFTER_MS) return [];
    return [{ fromMs: timelineMs[index + 1]! - FOLDED_QUIET_MS, toMs: timelineMs[index + 1]!, said: lastedMs < TOLD_FROM_MS ? null : words.playback.quietFor(lengthText(lastedMs / 1000)) }];
  });
}
