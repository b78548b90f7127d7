import type { CoachSays } from '../facts/coach.ts';
import type { DeviceSays, Fact } from '../facts/fact.ts';
import { firstAway, sessionIn, throwIn, withEntry, withNewest, type Ledger, type SessionEntry, type Tags, type ThrowEntry, type Thrown } from './ledger.ts';
import { dayIn } from './local-day.ts';

/** A throw belongs to whoever has the mound. */
export function measured(ledger: Ledger, fact: Fact, said: Extract<DeviceSays, { kind: 'throw-measured' }>): Ledger {
  const { source, body } = said;
  const { air, active: session } = ledger;
  const owner = session === null ? undefined : sessionIn(ledger, session);
  const entry: ThrowEntry = {
    place: fact.place,
    atMs: fact.atMs,
    source,
    body,
    air: air?.air ?? null,
    corrected: false,
    session,
    tags: owner === undefined ? {} : { [owner.id]: tagsOnThrowing(owner, fact.atMs) },
  };
  return withNewest(ledger, entry, fact.atMs);
}

/** What was said carries over to the next throw; a throw enters the trial only with the trial's intent. */
function tagsOnThrowing(session: SessionEntry, atMs: number): Tags {
  const { stage, distanceM, effort, intent } = session;
  const trial = session.trials.find(({ letter }) => letter === session.trial);
  return { stage, distanceM, effort, day: dayIn(session.timeZone, atMs), intent, taggedLater: false, trial: trial !== undefined && trial.intent === intent ? trial.letter : null, excluded: null };
}

/** Another body under the same name; a correction of a throw that is not there changes nothing. */
export function corrected(ledger: Ledger, said: Extract<DeviceSays, { kind: 'throw-corrected' }>): Ledger {
  const { source, corrects, body } = said;
  const entry = measuredAs(ledger, source.device, corrects);
  if (entry === undefined) return ledger;
  const mended: ThrowEntry = { ...entry, body, source: { ...source, run: entry.source.run, sequence: entry.source.sequence, time: entry.source.time }, corrected: true };
  return withEntry(ledger, mended, entry);
}

/** The newest are looked at first: those are corrected. */
function measuredAs(ledger: Ledger, device: string, { run, sequence }: { readonly run: string; readonly sequence: number }): ThrowEntry | undefined {
  const newest = (thrown: Thrown): ThrowEntry | undefined => {
    for (let index = thrown.length - 1; index >= 0; index -= 1) {
      const found = thrown[index]!.findLast(({ source }) => source.sequence === sequence && source.run === run && source.device === device);
      if (found !== undefined) return found;
    }
    return undefined;
  };
  for (const thrown of [...Object.values(ledger.throws), ledger.unclaimed]) {
    const found = newest(thrown);
    if (found !== undefined) return found;
  }
  return firstAway(ledger, ({ numbers }) => numbers.some((one) => one.device === device && one.run === run && one.from <= sequence && sequence <= one.to), newest);
}

/** Into another session, or to nobody; what each session said of a throw stays with it. */
export function moved(ledger: Ledger, said: Pick<Extract<CoachSays, { kind: 'throws-moved' }>, 'session' | 'places'>): Ledger {
  const target = said.session === null ? undefined : sessionIn(ledger, said.session);
  if (said.session !== null && target === undefined) return ledger;
  return mapThrows(ledger, said.places, (entry) => ({
    ...entry,
    session: said.session,
    tags: target === undefined || entry.tags[target.id] !== undefined ? entry.tags : { ...entry.tags, [target.id]: tagsOnMoving(target, entry.atMs) },
  }));
}

/** What the other session had said was about somebody else's throw, so a moved throw comes untagged into the stage of its new session. */
function tagsOnMoving({ stage, distanceM, effort, timeZone }: SessionEntry, atMs: number): Tags {
  return { stage, distanceM, effort, day: dayIn(timeZone, atMs), intent: null, taggedLater: false, trial: null, excluded: null };
}

/** Changes what a session says of throws that are its own. */
export function retag(ledger: Ledger, said: { readonly session: string; readonly places: readonly number[] }, change: (tags: Tags) => Tags): Ledger {
  return mapThrows(ledger, said.places, (entry) => {
    const tags = entry.tags[said.session];
    return entry.session !== said.session || tags === undefined ? entry : { ...entry, tags: { ...entry.tags, [said.session]: change(tags) } };
  });
}

function mapThrows(ledger: Ledger, places: readonly number[], change: (entry: ThrowEntry) => ThrowEntry): Ledger {
  return places.reduce((before, place) => {
    const entry = throwIn(before, place);
    return entry === undefined ? before : withEntry(before, change(entry), entry);
  }, ledger);
}
