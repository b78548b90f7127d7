import { fileURLToPath } from 'node:url';
import { expect, test, type Page } from '@playwright/test';
import { build, type Rolldown } from 'vite';
import type { Fact } from '../../core/facts/fact.ts';
import type { MoundView } from '../../core/facts/views.ts';
import type { Ledger } from '../../core/session/ledger.ts';
import { disagreements, sameBits } from '../parity/agreement.ts';
import type { playedViews } from '../parity/entry.ts';
import { busyDay, type Day, type Event } from '../parity/sessions.ts';
import { connectCoach, type TestCoach } from './coach.ts';
import { connectDevice } from './device.ts';
import { startServer, temporaryFolder, type TestServer } from './server.ts';

/** One busy day for every shape in which a device can send a throw. The same seeds for ever: a failure can be looked at again. */
const DAYS: readonly Day[] = [
  busyDay(2101, 'north-1', 'path', 90),
  busyDay(2102, 'south-2', 'constant', 90),
  busyDay(2103, 'cage-3', 'spin-only', 90),
  busyDay(2104, 'field-4', 'summary', 90),
];
const HAPPENED: readonly Event[] = [
  'throw', 'unclaimed', 'repeated', 'late', 'corrected', 'moved', 'claimed', 'tagged', 'excluded', 'restored', 'renewed', 'passed',
  'trial', 'resumed', 'zone', 'stage', 'note', 'closed', 'left-hander', 'spin-only', 'catch-play', 'again', 'air',
];

interface Played {
  readonly carry: Ledger;
  readonly facts: readonly Fact[];
}

test('the recorded days hold everything that can go wrong on a mound', () => {
  const happened = new Set(DAYS.flatMap(({ events }) => [...events]));
  expect([...happened].toSorted()).toEqual([...HAPPENED].toSorted());
});

for (const day of DAYS) {
  const { mound } = day.hello;
  test(`on ${mound} the views sent live by the server and those of playback in Chromium agree at every place`, async ({ page }) => {
    const { folder, remove } = temporaryFolder();
    const server = await startServer(folder);
    try {
      const live = await liveThrough(server, day);
      await page.addScriptTag({ content: await playbackAlone() });
      let compared = 0;
      let numbers = 0;
      let same = 0;
      for (const session of day.sessions) {
        const slice = (await (await fetch(`${server.address}/api/sessions/${session}`)).json()) as Played;
        const played = await playIn(page, slice, session);
        expect(played).toHaveLength(slice.facts.length);
        for (const view of played) {
          const sent = live.get(session)!.get(view.place);
          expect(sent, `${session} was not sent at place ${view.place}`).toBeDefined();
          expect(disagreements(sent, view), `${session} at place ${view.place}`).toEqual([]);
          const bits = sameBits(sent, view);
          compared += 1;
          numbers += bits.numbers;
          same += bits.same;
        }
        const newest = [...live.get(session)!.values()].at(-1)!;
        const last = played.at(-1)!;
        expect(disagreements({ session: newest.session, throws: newest.throws }, { session: last.session, throws: last.throws }), `${session} at its end`).toEqual([]);
      }
      expect(compared).toBeGreaterThan(day.happenings.length / 2);
      test.info().annotations.push({ type: 'compared', description: `${compared} views, ${numbers} numbers, ${same} of them to the last bit` });
    } finally {
      await server.stop();
      remove();
    }
  });
}

/** Lets a day happen on the real server, and gives what each session's screens were sent, by place. */
async function liveThrough(server: TestServer, { hello, happenings, sessions }: Day): Promise<Map<string, ReadonlyMap<number, MoundView>>> {
  const device = await connectDevice(server, hello);
  const coach = await connectCoach(server, hello.mound);
  const screens = new Map<string, TestCoach>();
  for (const session of sessions) screens.set(session, await connectCoach(server, hello.mound, session));
  for (const happening of happenings) {
    if (happening.kind === 'say') expect(await coach.say(happening.says)).toBe(happening.place);
    else expect(await device.send(happening.frame)).toEqual({ kind: 'stored', sequence: happening.frame.sequence });
    for (const screen of screens.values()) expect((await screen.reaches(happening.place)).place).toBe(happening.place);
  }
  await device.close();
  coach.close();
  for (const screen of screens.values()) screen.close();
  return new Map([...screens].map(([session, { views }]) => [session, views]));
}

function playIn(page: Page, slice: Played, session: string): Promise<MoundView[]> {
  return page.evaluate(([recorded, id]) => (globalThis as unknown as { parity: { playedViews: typeof playedViews } }).parity.playedViews(recorded, id), [slice, session] as const);
}

/** The folds of Playback, bundled for the browser as the screens are. */
async function playbackAlone(): Promise<string> {
  const bundles = (await build({
    configFile: false,
    logLevel: 'error',
    build: { write: false, target: 'es2023', lib: { entry: fileURLToPath(new URL('../parity/entry.ts', import.meta.url)), formats: ['iife'], name: 'parity' } },
  })) as Rolldown.RolldownOutput[];
  return bundles[0]!.output[0].code;
}
