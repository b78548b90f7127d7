import { askForAthleteDays, askForAthleteRecords, type Answer } from '../live/recorded.ts';
import { foldedSession, type AthleteRecord } from './record.ts';

/** Asks for all sessions of an athlete; the first answer that is none is the answer. */
export async function askForRecord(athlete: string): Promise<Answer<AthleteRecord>> {
  const [records, days] = await Promise.all([askForAthleteRecords(athlete), askForAthleteDays(athlete)]);
  if (records.kind !== 'answer') return records;
  if (days.kind !== 'answer') return days;
  const sessions = records.value.flatMap((record) => foldedSession(record) ?? []);
  const newest = sessions[0];
  return newest === undefined ? { kind: 'silent' } : { kind: 'answer', value: { athlete: newest.entry.athlete, sessions, days: days.value } };
}
