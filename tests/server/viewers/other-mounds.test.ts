import { expect, test } from 'vitest';
import type { SayReply } from '../../../core/facts/wire.ts';
import { DeviceClient } from '../device-client.ts';
import { ATHLETE, opened, summary } from '../frames.ts';
import { serverForTest } from '../running.ts';
import { ScreenClient } from '../screen-client.ts';

const pain = (session: string) => ({ kind: 'arm-reported', session, from: 'bench', said: 'pain', areas: ['elbow'] });
const answer = (session: string) => ({ kind: 'pain-answered', session, answer: 'professional-looked', words: 'Dr. Invented looked' });

/** Two mounds of one bullpen, each with a coach's screen. */
async function twoMounds() {
  const server = await serverForTest();
  const [north, south] = [new ScreenClient(server), new ScreenClient(server)];
  await Promise.all([north.watch(), south.watch({ mound: 'south-1' })]);
  let requests = 0;
  const sayOnSouth = (says: unknown, request = `south-request-${++requests}`): Promise<SayReply> => south.socket.emitWithAck('say', { request, mound: 'south-1', says });
  return { server, north, south, sayOnSouth };
}

test('pain reported on one mound is known on the next one the athlete throws from, with the throws of the day', async () => {
  const { server, north, south, sayOnSouth } = await twoMounds();
  await north.say(opened('s-1'));
  const { client } = await DeviceClient.greet(server.address, server.token);
  await client.ask({ kind: 'throw', sequence: 1, time: 1, body: summary() });
  await north.say(pain('s-1'));
  await sayOnSouth(opened('s-2'));
  await south.atPlace(2);
  expect(south.view?.session?.armCare).toMatchObject({ kind: 'pain-reported', report: { areas: ['elbow'] }, moundThrows: 1 });
});

test('pain reported or answered for on one mound reaches a session that is open on another', async () => {
  const { north, south, sayOnSouth } = await twoMounds();
  await north.say(opened('s-1'));
  await sayOnSouth(opened('s-2'));
  await north.say(pain('s-1'));
  await south.until(() => south.view?.session?.armCare.kind === 'pain-reported');
  expect(await sayOnSouth(answer('s-2'))).toMatchObject({ kind: 'stored' });
  await north.until(() => north.view?.session?.armCare.kind === 'under');
  expect(south.view?.session?.armCare.kind).toBe('under');
});

test('another athlete’s pain is nobody else’s', async () => {
  const { north, south, sayOnSouth } = await twoMounds();
  await north.say(opened('s-1'));
  await north.say(pain('s-1'));
  await sayOnSouth(opened('s-2', { athlete: { ...ATHLETE, id: 'bo-1', name: 'Bo Invented' } }));
  await south.atPlace(1);
  expect(south.view?.session?.armCare.kind).toBe('under');
});

test('an opening that is said again tells nothing twice', async () => {
  const { north, south, sayOnSouth } = await twoMounds();
  await north.say(opened('s-1'));
  await north.say(pain('s-1'));
  const first = await sayOnSouth(opened('s-2'), 'the-same-request');
  expect(await sayOnSouth(opened('s-2'), 'the-same-request')).toEqual(first);
  await sayOnSouth({ kind: 'note-written', session: 's-2', text: 'warm', place: null });
  await south.until(() => south.view?.session?.notes.length === 1);
  expect(south.view?.place).toBe(3);
});

const FASTBALLS = [[90, 16], [90.5, 16.5], [89.5, 15.5], [90.2, 16.2], [89.8, 15.8]] as const;
const ZONE = { kind: 'ellipse', verticalM: -0.2, armSideM: 0.1, verticalRadiusM: 0.08, armSideRadiusM: 0.08 } as const;
const compared = (session: string, k: number, baseline: number) => ({ kind: 'comparison-opened', session, k, stage: 'mound', zone: ZONE, a: 'A', b: 'B', baseline });
const trialSaid = (session: string, words: string) => ({ kind: 'trial-begun', session, intent: 'changeup', grip: null, cue: { words, focus: null } });

/** On north a session with a baseline, a target and two trials; then one on south that begins with them, and has two trials too. */
async function oneAthleteOnTwoMounds() {
  const both = await twoMounds();
  const { server, north, sayOnSouth } = both;
  await north.say(opened('s-1'));
  await north.say({ kind: 'intent-set', session: 's-1', intent: 'four-seam' });
  const { client } = await DeviceClient.greet(server.address, server.token);
  for (const [index, [speed, verticalBreak]] of FASTBALLS.entries()) await client.ask({ kind: 'throw', sequence: index + 1, time: index, body: summary(speed, { verticalBreak }) });
  await north.say({ kind: 'zone-set', session: 's-1', zone: ZONE, speedBand: { lowMps: -5, highMps: -3 }, reason: null });
  await sayOnSouth(opened('s-2'));
  for (const words of ['through', 'over']) {
    await north.say(trialSaid('s-1', words));
    await sayOnSouth(trialSaid('s-2', words));
  }
  return both;
}

test('a session on a second mound begins with the baseline and the target of the first, with their date', async () => {
  const { north, south } = await oneAthleteOnTwoMounds();
  await north.until(() => north.view?.session?.trials.length === 2);
  await south.until(() => south.view?.session?.trials.length === 2);
  const { baseline, zone, speedBand } = south.view!.session!;
  expect(baseline).toEqual({ ...north.view!.session!.baseline, origin: 'earlier' });
  expect(baseline).toMatchObject({ kind: 'baseline', number: 1, atMs: north.view!.throws.at(-1)!.atMs });
  expect({ zone, speedBand }).toEqual({ zone: ZONE, speedBand: { lowMps: -5, highMps: -3 } });
});

test('comparisons of one athlete are numbered over the mounds: one opened on the first is 1, the next on the second is 2', async () => {
  const { north, south, sayOnSouth } = await oneAthleteOnTwoMounds();
  await Promise.all([north, south].map((screen) => screen.until(() => screen.view?.session?.trials.length === 2)));
  const [northPlace, southPlace] = [north.view!.place, south.view!.place];
  expect(await north.say(compared('s-1', 1, 1))).toEqual({ kind: 'stored', place: northPlace + 1 });
  await south.atPlace(southPlace + 1);
  expect(await sayOnSouth(compared('s-2', 1, 1))).toMatchObject({ kind: 'refused', code: 'not-the-next-number', path: 'says.k' });
  expect(await sayOnSouth(compared('s-2', 2, 1))).toEqual({ kind: 'stored', place: southPlace + 2 });
  await north.atPlace(northPlace + 2);
  expect(await north.say(compared('s-1', 3, 1))).toMatchObject({ kind: 'stored' });
});

test('of two comparisons that are opened at once on two mounds only one gets the number', async () => {
  const { north, sayOnSouth } = await oneAthleteOnTwoMounds();
  const answers = await Promise.all([north.say(compared('s-1', 1, 1)), sayOnSouth(compared('s-2', 1, 1))]);
  expect(answers.map(({ kind }) => kind).sort()).toEqual(['refused', 'stored']);
  expect(answers.find(({ kind }) => kind === 'refused')).toMatchObject({ sentence: expect.stringContaining('number 2, not 1') });
});

test('a comparison opened in a closed session counts those of the other mounds too', async () => {
  const { north, sayOnSouth } = await oneAthleteOnTwoMounds();
  await sayOnSouth({ kind: 'session-closed', session: 's-2' });
  expect(await north.say(compared('s-1', 1, 1))).toMatchObject({ kind: 'stored' });
  expect(await sayOnSouth(compared('s-2', 1, 1))).toMatchObject({ code: 'not-the-next-number' });
  expect(await sayOnSouth(compared('s-2', 2, 1))).toMatchObject({ kind: 'stored' });
});

const gateOf = (screen: ScreenClient, letter = 'A') => {
  const session = screen.view!.session!;
  return { letter, stage: session.progress.stages.find(({ stage }) => stage === 'mound')! };
};

test('gates, comfort, passed gates, what was thrown for them, the day’s own most and the decision point go along to the next mound', async () => {
  const { server, north, south, sayOnSouth } = await twoMounds();
  const { client } = await DeviceClient.greet(server.address, server.token);
  let sequence = 0;
  const throwIt = async (vertical: number) => client.ask({ kind: 'throw', sequence: (sequence += 1), time: sequence, body: summary(88, { verticalBreak: vertical }) });
  await north.say(opened('s-1'));
  await north.say({ kind: 'intent-set', session: 's-1', intent: 'four-seam' });
  for (const [, vertical] of FASTBALLS) await throwIt(vertical);
  await north.say({ kind: 'zone-set', session: 's-1', zone: { ...ZONE, verticalRadiusM: 1, armSideRadiusM: 1 }, speedBand: null, reason: null });
  await north.say(trialSaid('s-1', 'through'));
  for (const vertical of [7, 8, 9, 8.5]) await throwIt(vertical);
  await north.say({ kind: 'gate-set', session: 's-1', stage: 'mound', gate: { comfort: true, shareAbove: 0.7 } });
  await north.say({ kind: 'comfort-said', session: 's-1', from: 'bench', comfortable: true });
  await north.say({ kind: 'gate-passed', session: 's-1', stage: 'mound', trial: 'A', reason: 'ready' });
  await north.say({ kind: 'count-planned', session: 's-1', throws: 40, dayMost: 50 });
  await north.say({ kind: 'decision-set', session: 's-1', beforeS: 0.2, basis: 'same-distance' });
  await north.say({ kind: 'session-closed', session: 's-1' });

  await sayOnSouth(opened('s-2'));
  await sayOnSouth(trialSaid('s-2', 'through'));
  await south.until(() => south.view?.session?.trial?.letter === 'A');
  const { session } = south.view!;
  expect(session).toMatchObject({ plannedThrows: 40, decision: { beforeS: 0.2, basis: 'same-distance' }, armCare: { dayMost: 50, dayMostFrom: 'own-rule' } });
  expect(gateOf(south).stage).toMatchObject({
    gate: { comfort: true, shareAbove: 0.7 }, passed: [{ trial: 'A', reason: 'ready' }],
    work: { comfort: { comfortable: true }, hits: 4, judged: 4, days: [{ throws: 4, hits: 4, judged: 4 }] },
  });
  // What is said later on the second mound goes back to the first, and what was known there is told once.
  await sayOnSouth({ kind: 'gate-set', session: 's-2', stage: 'mound', gate: { comfort: false, shareAbove: null } });
  await sayOnSouth({ kind: 'session-closed', session: 's-2' });
  await north.say(opened('s-3'));
  await north.until(() => north.view?.session?.id === 's-3');
  expect(gateOf(north).stage.gate).toEqual({ comfort: false, shareAbove: null });
});

test('a league’s most for the day reaches a session that is open on another mound', async () => {
  const { north, south, sayOnSouth } = await twoMounds();
  await north.say(opened('s-1'));
  await sayOnSouth(opened('s-2'));
  await north.say({ kind: 'count-planned', session: 's-1', throws: null, dayMost: 33 });
  await south.until(() => south.view?.session?.armCare.dayMost === 33);
  expect(south.view?.session?.armCare.dayMostFrom).toBe('own-rule');
});

test('a comparison that was opened on one mound goes on from another, and neither mound takes a day twice', async () => {
  const { north, south, sayOnSouth } = await oneAthleteOnTwoMounds();
  const continued = (session: string, on: string) => ({ kind: 'comparison-continued', session, k: 1, day: { session: on, a: 'A', b: 'B', baseline: 1 } });
  expect(await sayOnSouth(continued('s-2', 's-2'))).toMatchObject({ kind: 'refused', code: 'no-such-comparison' });
  await sayOnSouth({ kind: 'session-closed', session: 's-2' });
  await north.say(compared('s-1', 1, 1));
  // The session on south was closed before the comparison was opened: it hears of it when it is to go on there.
  expect(await sayOnSouth(continued('s-2', 's-2'))).toMatchObject({ kind: 'stored' });
  expect(await sayOnSouth(continued('s-2', 's-2'))).toMatchObject({ kind: 'refused', code: 'day-known' });
  const place = south.view!.place;
  await north.until(() => north.view!.place > 0);
  expect(await north.say(continued('s-1', 's-2'))).toMatchObject({ kind: 'refused', code: 'day-known' });
  await sayOnSouth(opened('s-4'));
  await south.until(() => south.view!.session?.id === 's-4');
  expect(await sayOnSouth(compared('s-4', 1, 1))).toMatchObject({ code: 'not-the-next-number' });
  expect(place).toBeGreaterThan(0);
});
