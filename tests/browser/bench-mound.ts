import { expect, test, type Locator, type Page } from '@playwright/test';
import type { Athlete } from '../../core/facts/coach.ts';
import type { Fact, Said } from '../../core/facts/fact.ts';
import type { ThrowBody } from '../../core/facts/frames.ts';
import { ATHLETE, connectCoach, opening, type TestCoach } from './coach.ts';
import { connectDevice, counted, type CountedThrows, type TestDevice } from './device.ts';
import { startServer, temporaryFolder, type TestServer } from './server.ts';

const MOUND = 'north-1';
export const LEFT_HANDER: Athlete = { ...ATHLETE, id: 'ione', name: 'Ione Castellan', hand: 'left' };

/** A fastball and a changeup of a right-hander, as a device sums them up: miles an hour and inches. */
export const FASTBALL: ThrowBody = { summary: { releaseSpeed: 91, verticalBreak: 16, horizontalBreak: -7 } };
export const CHANGEUP: ThrowBody = { summary: { releaseSpeed: 81, verticalBreak: 8, horizontalBreak: -9 } };

let server: TestServer;
let device: TestDevice;
let throwing: CountedThrows;

/** Gives every test of a file a mound of its own: a server with an empty log, and a device at its door. */
export function withMound(): void {
  let rid: () => void;
  test.beforeEach(async () => {
    const { folder, remove } = temporaryFolder();
    rid = remove;
    server = await startServer(folder);
    device = await connectDevice(server);
    throwing = counted(device);
  });
  test.afterEach(async () => {
    await device.close();
    await server.stop();
    rid();
  });
}

/** The server of the running test. */
export const testServer = (): TestServer => server;

/** Throws of its device. */
export const throws: CountedThrows = (body, times) => throwing(body, times);

/** Opens Bench on a page. */
export async function tablet(page: Page, query = 'lang=en'): Promise<void> {
  await page.goto(`${server.address}/bench/${MOUND}?${query}`);
}

/** A coach without a tablet, at the same mound. */
export const coachAtMound = (): Promise<TestCoach> => connectCoach(server, MOUND);

/** Everything that was said in a session, as its log holds it. */
export async function saidIn(session: string): Promise<readonly Said[]> {
  const { facts } = await (await fetch(`${server.address}/api/sessions/${session}`)).json() as { facts: readonly Fact[] };
  return facts.map(({ said }) => said);
}

/** A session with a baseline, told by a coach without a tablet: eight facts. */
export async function begun(): Promise<TestCoach> {
  const coach = await coachAtMound();
  await coach.say(opening('one'));
  await coach.say({ kind: 'intent-set', session: 'one', intent: 'four-seam' });
  await throws(FASTBALL, 5);
  await coach.say({ kind: 'intent-set', session: 'one', intent: 'changeup' });
  return coach;
}

/** Goes to a place of Bench, where the screen does not show it anyway. */
export async function goTo(page: Page, place: string): Promise<void> {
  await page.getByRole('navigation', { name: 'Places of Bench' }).getByRole('button', { name: place, exact: true }).click();
}

export const nextThrow = (page: Page): Locator => page.locator('.next-throw');
export const intent = (page: Page, name: string): Locator => page.getByRole('group', { name: 'Intent of the next throw' }).getByRole('button', { name });
export const lines = (page: Page): Locator => page.locator('.throw-line');
export const chooseThrow = (page: Page, number: number): Promise<void> => page.getByRole('checkbox', { name: `Select throw ${number}`, exact: true }).check();

/** Goes on with the Tab key until the element has the focus. */
export async function tabTo(page: Page, target: Locator): Promise<void> {
  for (let tabs = 0; tabs < 60 && !(await target.evaluate((element) => element === document.activeElement)); tabs += 1) await page.keyboard.press('Tab');
  await expect(target).toBeFocused();
}
