import type { MoundView } from '../../core/facts/views.ts';
import { standingWords, type Standing } from '../standing/standing.ts';
import { lastThrow } from '../wall/last-throw.ts';
import { dateText, timeText } from '../words/moments.ts';
import type { Speech } from '../words/speech.ts';
import { zoneOffset } from '../words/zone-offset.ts';

/** What a saved picture says of itself: who and which throw; when, by the bullpen's clock; whether live, and by which formulas. */
export function captionOf(view: MoundView, standing: Standing, speech: Speech): string[] {
  const { session, mound, scienceVersion } = view;
  const thrown = lastThrow(view);
  if (session === null) return [mound];
  const { trade, takingOut } = speech.words;
  const atMs = thrown?.atMs ?? view.atMs;
  const who = [session.athlete.name, mound, ...(thrown === null ? [] : [trade.throwNumber(thrown.number)]), ...(session.trial === null ? [] : [trade.trial(session.trial.letter)])];
  const when = `${dateText(atMs, session.timeZone, speech.language)}, ${timeText(atMs, session.timeZone, speech.language)} ${zoneOffset(atMs, session.timeZone)} (${session.timeZone})`;
  return [who.join(' · '), [when, standingWords(standing, session.timeZone, speech), takingOut.science(scienceVersion)].join(' · ')];
}
