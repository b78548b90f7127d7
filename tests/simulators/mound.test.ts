import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { CoachSays } from '../../core/facts/coach.ts';
import { ATHLETES } from '../../simulators/athletes.ts';
import { runMound } from '../../simulators/mound.ts';
import type { Options } from '../../simulators/options.ts';
import { bullpen } from '../../simulators/plan.ts';
import { manualClock, type ManualClock } from './manual-clock.ts';
import { playServer, type ServerPart } from './server-part.ts';

let clock: ManualClock;
let server: ServerPart;
let stop: AbortController;
let said: string[];
beforeEach(async () => {
  clock = manualClock();
  server = await playServer(clock);
  stop = new AbortController();
  said = [];
});
afterEach(async () => {
  await server.close();
});

function start(change: Partial<Options> = {}): Promise<string | null> {
  const options: Options = { url: server.url, tokenFile: '', mound: 'north-1', athletes: ATHLETES, seed: 1, intervalMs: 6_000, count: null, faults: [], coach: true, ...change };
  return runMound({ options, token: 'secret', name: 'start1', timeZone: 'UTC', clock, tablet: server.tablet(), print: (line) => said.push(line), stop: stop.signal });
}
/** Lets time go on, as fast as sockets allow, until the condition holds. */
async function until(condition: () => boolean): Promise<void> {
  for (let steps = 0; !condition(); steps += 1) {
    if (steps > 20_000) throw new Error(`It never came to that; said: ${said.join(' | ')}`);
    await server.roundTrip();
    await new Promise((resolve) => setImmediate(resolve));
    if (!condition()) clock.next();
  }
}
/** Runs to its end, with time going on as long as it takes. */
async function ended(run: Promise<string | null>): Promise<string | null> {
  let over = false;
  void run.finally(() => {
    over = true;
  });
  await until(() => over);
  return run;
}
const throws = (): number => server.facts.filter(({ said: { kind } }) => kind === 'throw-measured').length;
const bodies = (): string[] => server.heard.flatMap((frame) => (frame.kind === 'throw' ? [JSON.stringify(frame)] : []));
const coachKinds = (): string[] => server.facts.flatMap(({ by, said: { kind } }) => (by === 'coach' ? [kind] : []));

describe('a simulated mound', () => {
  it('throws the first six fastballs within ten seconds, and the baseline stands', async () => {
    const startMs = clock.nowMs();
    const run = start();
    await until(() => throws() === 6);
    expect(clock.nowMs() - startMs).toBeLessThan(10_000);
    expect(server.view().session).toMatchObject({ athlete: { id: 'corvin-halloway' }, intent: 'four-seam', baseline: { kind: 'baseline', origin: 'this-session' } });
    stop.abort();
    await ended(run);
    expect(server.view().session?.closedAtMs).not.toBeNull();
  });

  it('the coach calls the whole bullpen, closes it, and brings the next athlete with the next device', async () => {
    const run = start();
    await until(() => throws() === 61);
    stop.abort();
    expect(await ended(run)).toBeNull();
    const [first] = server.facts;
    expect(first?.said).toMatchObject({ kind: 'session-opened', stage: 'mound', athlete: { name: 'Corvin Halloway' } });
    expect(coachKinds().filter((kind) => kind === 'session-opened')).toHaveLength(2);
    expect(coachKinds().filter((kind) => kind === 'session-closed')).toHaveLength(2);
    expect(coachKinds().filter((kind) => kind === 'trial-begun')).toHaveLength(2);
    expect(coachKinds().filter((kind) => kind === 'zone-set')).toHaveLength(1);
    expect(server.view().unclaimed).toHaveLength(0);
    const devices = server.heard.flatMap((frame) => (frame.kind === 'hello' ? [[frame.hello.device, frame.hello.run]] : []));
    expect(devices).toEqual([['camera-pair.north-1', 'start1-1'], ['spin-reader.north-1', 'start1-2']]);
    expect(server.view().session?.athlete.name).toBe('Tobin Marrask');
  });

  it('throws changeups of trial A and B in blocks of five, with the grips and cues that were said', async () => {
    const run = start({ count: 60 });
    await ended(run);
    const view = server.view();
    expect(view.throws).toHaveLength(60);
    const row = view.throws.map(({ trial, fastball }) => (fastball ? 'F' : trial)).join('');
    expect(row).toBe(`FFFFFF${'AAAAAFFBBBBBFF'.repeat(4).slice(0, -2)}`);
    expect(view.session?.trials.map(({ letter, grip, cue, count }) => [letter, grip, cue, count])).toEqual(
      ['A', 'B'].map((letter, index) => [letter, ATHLETES[0].tried[index]!.grip, ATHLETES[0].tried[index]!.cue, 20]),
    );
  });

  it.each(ATHLETES.map((athlete) => ({ name: athlete.profile.name, athlete })))('$name hits the target zone with some changeups and misses it with others', async ({ athlete }) => {
    await ended(start({ athletes: [athlete], count: 60 }));
    const judged = server.view().throws.flatMap(({ miss }) => (miss === null ? [] : [miss]));
    const hits = judged.filter(({ onTarget }) => onTarget).length;
    expect(judged).toHaveLength(40);
    expect(hits).toBeGreaterThan(4);
    expect(hits).toBeLessThan(36);
  });

  it('the same seed gives the same frames byte for byte, another seed others', async () => {
    const rows: string[][] = [];
    for (const seed of [1, 1, 2]) {
      clock = manualClock();
      await server.close();
      server = await playServer(clock);
      await ended(start({ count: 20, seed, athletes: [ATHLETES[1]] }));
      rows.push(bodies());
    }
    expect(rows[0]).toHaveLength(20);
    expect(rows[1]).toEqual(rows[0]);
    expect(rows[2]).not.toEqual(rows[0]);
  });

  it('faults change neither the throws nor their number in the end', async () => {
    const speeds = () => server.view().throws.map(({ speedMps }) => speedMps).sort();
    await ended(start({ count: 12, athletes: [ATHLETES[1]] }));
    const plain = speeds();
    await server.close();
    clock = manualClock();
    server = await playServer(clock);
    await ended(start({ count: 12, athletes: [ATHLETES[1]], faults: ['repeated', 'late', 'corrected'] }));
    expect(said.filter((line) => line.includes('fault')).length).toBeGreaterThan(0);
    expect(speeds()).toEqual(plain);
  });

  it('the coach falls silent when a person says something at Bench, and the athlete throws what Bench says', async () => {
    const run = start();
    await until(() => throws() === 8);
    const session = server.view().session!.id;
    const person: CoachSays = { kind: 'intent-set', session, intent: 'curve' };
    expect(server.personSays(person).kind).toBe('stored');
    const before = coachKinds().length;
    await until(() => throws() === 75);
    expect(coachKinds()).toHaveLength(before);
    expect(said.filter((line) => line.startsWith('coach:'))).toEqual(['coach: a person has taken over at Bench; the simulated coach says nothing any more, the athlete throws what Bench says']);
    const last = server.view().throws.slice(-10);
    expect(last.every(({ intent }) => intent === 'curve')).toBe(true);
    // A curve falls: its induced break is downward.
    expect(last.every(({ verticalM }) => typeof verticalM === 'number' && verticalM < 0)).toBe(true);
    stop.abort();
    await ended(run);
    expect(server.view().session?.closedAtMs).toBeNull();
  });

  it('stays out of a session that a person has open, and throws in it with the hand of its athlete', async () => {
    const left = { ...ATHLETES[2].profile, id: 'somebody', name: 'Somebody Else' };
    server.personSays({ kind: 'session-opened', session: 'mine', athlete: left, timeZone: 'UTC', stage: 'mound', distanceM: 18.4404, effort: 'full' });
    const run = start({ count: 7 });
    await ended(run);
    expect(coachKinds()).toEqual(['session-opened']);
    expect(server.view().throws).toHaveLength(7);
    expect(server.view().throws.every(({ releaseArmSideM }) => typeof releaseArmSideM === 'number' && releaseArmSideM > 0.2)).toBe(true);
  });

  it('closes a session that an earlier simulated coach left open', async () => {
    server.personSays({ kind: 'session-opened', session: 'simulated-before-1', athlete: ATHLETES[0].profile, timeZone: 'UTC', stage: 'mound', distanceM: 18.4404, effort: 'full' });
    const run = start();
    await until(() => throws() === 2);
    expect(server.view().openSessions.map(({ id }) => id)).toEqual(['simulated-start1-1']);
    stop.abort();
    await ended(run);
  });

  it('after a person closes the session, six more throws stay unclaimed and the athlete rests until a session is open', async () => {
    const run = start();
    await until(() => throws() === 3);
    server.personSays({ kind: 'session-closed', session: server.view().session!.id });
    await until(() => said.some((line) => line.includes('rests')));
    const hourLaterMs = clock.nowMs() + 3_600_000;
    await until(() => clock.nowMs() > hourLaterMs);
    expect(server.view().unclaimed).toHaveLength(6);
    server.personSays({ kind: 'session-opened', session: 'mine', athlete: ATHLETES[0].profile, timeZone: 'UTC', stage: 'mound', distanceM: 18.4404, effort: 'full' });
    await until(() => server.view().throws.length === 2);
    stop.abort();
    await ended(run);
  });

  it('without a coach nobody says anything and every throw is unclaimed', async () => {
    await ended(start({ coach: false, count: 9 }));
    expect(coachKinds()).toEqual([]);
    expect(server.view().unclaimed).toHaveLength(9);
  });
});

it('a bullpen begins with at least six fastballs and has sixty throws', () => {
  const plan = bullpen();
  expect(plan).toHaveLength(60);
  expect(plan.slice(0, 6).every(({ kind }) => kind === 'fastball')).toBe(true);
});

describe('the seam effect of a simulated bullpen indoors', () => {
  const effects = () => server.view().session!.trials.map(({ seamEffect }) => seamEffect.kind);

  it('is seen in the grip that lets the seam work, and not in the other', async () => {
    await ended(start({ athletes: [ATHLETES[0]], count: 60 }));
    expect(server.view().air?.air.where).toBe('indoors');
    expect(effects()).toEqual(['not-seen', 'seen']);
  });

  it('is not seen in turnover changeups, before a device that could', async () => {
    await ended(start({ athletes: [{ ...ATHLETES[1], device: 'path' }], count: 60 }));
    expect(effects()).toEqual(['not-seen', 'not-seen']);
  });

  it('is not visible to the devices that read only spin or infer the axis', async () => {
    await ended(start({ athletes: [ATHLETES[1]], count: 24 }));
    expect(server.view().session!.trials[0]!.seamEffect).toEqual({ kind: 'not-visible', reason: 'spin-only' });
    await server.close();
    clock = manualClock();
    server = await playServer(clock);
    await ended(start({ athletes: [ATHLETES[2]], count: 24 }));
    expect(server.view().session!.trials[0]!.seamEffect).toEqual({ kind: 'not-visible', reason: 'axis-inferred' });
  });
});
