import { expect, type Page } from '@playwright/test';
import type { Fact } from '../../core/facts/fact.ts';
import { checkpointsOf, ledgerAt, recordingOf } from '../../core/session/checkpoints.ts';
import { moundView } from '../../core/session/view.ts';
import { sliceOf } from '../../core/session/recorded.ts';
import { longSession, SESSION as LONG_SESSION } from '../bench/long-session.ts';
import { easyFrame, FASTBALL, WORKED_THROWS } from './by-hand.ts';
import { changeupIsNext } from './changeup-next.ts';
import { ATHLETE, opening, type TestCoach } from './coach.ts';
import { keepBeating, type TestDevice } from './device.ts';
import { expectAccessible, expectWordsApart } from './fits.ts';
import { inProve } from './in-prove.ts';
import type { TestServer } from './server.ts';
import { tapAt, ticks } from './strip-ticks.ts';
import { test } from './with-server.ts';

/** More than a view shows. */
const LONG = 230;

interface Recorded {
  readonly facts: readonly Fact[];
}

/** Five fastballs, target, trial and five changeups: 14 facts, throws at places 3–7 and 10–14. */
async function sitting(coach: TestCoach, device: TestDevice): Promise<void> {
  await changeupIsNext(coach, device);
  for (const [index, worked] of WORKED_THROWS.entries()) await device.throws(6 + index, easyFrame(worked));
}

/** The server's own recording, with its facts spread over time as they are on a mound: a test cannot wait for that. */
async function spread(page: Page, server: TestServer, everyMs: number): Promise<void> {
  await page.route('**/api/sessions/s1', async (route) => {
    const recorded = (await (await fetch(`${server.address}/api/sessions/s1`)).json()) as Recorded;
    const startMs = Date.UTC(2026, 2, 14, 20, 0, 0);
    await route.fulfill({ json: { ...recorded, facts: recorded.facts.map((fact, index) => ({ ...fact, atMs: startMs + index * everyMs })) } });
  });
}

const player = (page: Page) => page.locator('.player');
const scrubber = (page: Page) => page.getByRole('slider', { name: 'Place in the session' });
const where = (page: Page) => page.locator('.where');

test('an empty list says how a session comes to be recorded', async ({ page, server }) => {
  await page.goto(`${server.address}/playback`);
  await expect(page.getByText('No session is recorded yet.')).toBeVisible();
  await expect(page.getByText('opens it on Bench')).toBeVisible();
  await expectAccessible(page);
});

test('the list shows athlete, date in the session\'s own zone, stage, throws and trials, the newest first, and leads to each', async ({ page, server, coach, device }) => {
  await sitting(coach, device);
  await coach.say({ kind: 'session-closed', session: 's1' });
  await coach.say({ ...opening('s2', { ...ATHLETE, id: 'ilse', name: 'Ilse Brandvold' }), timeZone: 'Pacific/Auckland' } as ReturnType<typeof opening>);
  await page.goto(`${server.address}/playback`);
  const rows = page.locator('tbody tr');
  await expect(rows).toHaveCount(2);
  const openedAtMs = (await coach.reaches(0)).session!.openedAtMs;
  const inAuckland = new Intl.DateTimeFormat('en-US', { timeZone: 'Pacific/Auckland', day: 'numeric', month: 'short', year: 'numeric' }).format(openedAtMs);
  await expect(rows.nth(0)).toContainText(inAuckland);
  await expect(rows.nth(0)).toContainText(/Ilse Brandvold.*open now.*none yet.*0.*none/s);
  await expect(rows.nth(1)).toContainText(/Wren Abelow.*Mound.*10.*A/s);
  await expect(rows.nth(1)).not.toContainText('open now');
  await coach.say({ kind: 'note-written', session: 's1', text: 'Loose wrist from the second block on', place: 12 });
  await page.getByLabel('Words of a note').fill('WRIST block');
  await expect(rows).toHaveCount(1);
  await expect(page).toHaveURL(/note=WRIST/);
  await page.getByLabel('Athlete').fill('ilse');
  await expect(page.getByText('No session matches all of this.')).toBeVisible();
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Without “Athlete”: 1 session' }).click();
  await page.getByRole('link', { name: 'Loose wrist from the second block on' }).click();
  await expect(where(page)).toContainText('Throw 8 of 10');
  await page.goBack();
  await expect(rows).toHaveCount(1);
  await page.getByRole('button', { name: 'Clear all' }).click();
  await expect(rows).toHaveCount(2);
  await rows.nth(1).getByRole('link').click();
  await expect(page).toHaveURL(/\/playback\/s1/);
  await expect(player(page)).toHaveAttribute('data-mode', 'paused');
});

test('a session that does not exist is said to be so, with the way back', async ({ page, server }) => {
  await page.goto(`${server.address}/playback/nobody`);
  await expect(page.getByRole('alert')).toContainText('There is no session with this id');
  await page.getByRole('link', { name: 'All recorded sessions' }).click();
  await expect(page).toHaveURL(/\/playback$/);
});

test.describe('a closed session', () => {
  test.beforeEach(async ({ page, server, coach, device }) => {
    await sitting(coach, device);
    await coach.say({ kind: 'session-closed', session: 's1' });
    await spread(page, server, 20_000);
  });

  test('stands paused at its start, says that it is played back and when, and is moved by keys alone', async ({ page, server }) => {
    await page.goto(`${server.address}/playback/s1`);
    // 20:00 UTC on 14 March is 15:00 in Chicago, where the session was.
    await expect(page.getByRole('status')).toHaveText('Played back 15:00:00');
    await expect(where(page)).toContainText('Before the first of 10 throws');
    const press = (key: string): Promise<void> => page.keyboard.press(key);
    await press('ArrowRight');
    await expect(where(page)).toContainText('Throw 1 of 10');
    await expect(page.getByRole('status')).toHaveText('Played back 15:00:40');
    await press('End');
    await expect(where(page)).toContainText('Throw 10 of 10');
    await expect(page.getByRole('button', { name: 'Play again' })).toBeVisible();
    await press('ArrowLeft');
    await expect(player(page)).toHaveAttribute('data-place', '14');
    await press('ArrowLeft');
    await expect(player(page)).toHaveAttribute('data-place', '13');
    await expect(page.locator('.wall-place-words')).toHaveText('2 in deep, arm side');
    await press('Home');
    await expect(where(page)).toContainText('Before the first');
    await press('ArrowUp');
    await expect(page.getByRole('combobox', { name: 'Rate' })).toHaveValue('2');
    await press('ArrowDown');
    await press('ArrowDown');
    await expect(page.getByRole('combobox', { name: 'Rate' })).toHaveValue('0.5');
    await press('w');
    await expect(page.locator('.wall-windows')).toBeVisible();
    await press('?');
    const list = page.getByRole('dialog', { name: 'Keys' });
    await expect(list).toContainText('play or pause');
    await expect(list).not.toContainText('back to live');
    await press('Escape');
    await expect(list).toBeHidden();
    await expect(page.getByRole('button', { name: 'Back to live' })).toHaveCount(0);
  });

  test('plays at the rate that is set, with quiet folded or in real spacing, and stops at its end', async ({ page, server }) => {
    await page.clock.install({ time: new Date('2026-05-01T12:00:00Z') });
    await page.goto(`${server.address}/playback/s1`);
    await where(page).waitFor();
    // 15 facts, 14 gaps of 20 s: 4:40, folded to 14 × 2 s.
    await expect(page.locator('.quiet-time')).toContainText('Quiet over 10 s counts as 2 s: 4:40 plays in 0:28');
    // From here the clock stands but for what the test lets pass, however slow the machine.
    await page.clock.pauseAt(new Date('2026-05-01T13:00:00Z'));
    await page.keyboard.press(' ');
    await expect(player(page)).toHaveAttribute('data-mode', 'playing');
    await page.clock.runFor(3900);
    await expect(player(page)).toHaveAttribute('data-place', '2');
    await page.clock.runFor(300);
    await expect(player(page)).toHaveAttribute('data-place', '3');
    await page.keyboard.press(' ');
    await page.clock.runFor(10_000);
    await expect(player(page)).toHaveAttribute('data-place', '3');

    await page.getByRole('checkbox', { name: /Fold quiet time/ }).uncheck();
    await expect(page.locator('.quiet-time')).toContainText('Real spacing: 4:40');
    await page.getByRole('combobox', { name: 'Rate' }).selectOption('10');
    await page.locator('.play').click();
    await page.clock.runFor(1900);
    await expect(player(page)).toHaveAttribute('data-place', '3');
    await page.clock.runFor(300);
    await expect(player(page)).toHaveAttribute('data-place', '4');
    await page.getByRole('combobox', { name: 'Rate' }).selectOption('50');
    await page.clock.runFor(6000);
    await expect(player(page)).toHaveAttribute('data-mode', 'paused');
    await expect(player(page)).toHaveAttribute('data-place', '15');
  });

  test('a part is played over and over, from one throw to another, by keys and by buttons', async ({ page, server }) => {
    await page.clock.install({ time: new Date('2026-05-01T12:00:00Z') });
    await page.goto(`${server.address}/playback/s1?throw=10`);
    await expect(where(page)).toContainText('Throw 6 of 10');
    await page.clock.pauseAt(new Date('2026-05-01T13:00:00Z'));
    await page.keyboard.press('i');
    await page.keyboard.press('ArrowRight');
    await page.getByRole('button', { name: 'To here' }).click();
    await expect(page.locator('.part-buttons')).toContainText('Over and over: 0:18 to 0:20');
    await page.keyboard.press(' ');
    // Two throws, two seconds each.
    await page.clock.runFor(2400);
    await expect(where(page)).toContainText('Throw 6 of 10');
    await page.clock.runFor(2000);
    await expect(where(page)).toContainText('Throw 7 of 10');
    await page.clock.runFor(2000);
    await expect(where(page)).toContainText('Throw 6 of 10');
    await page.keyboard.press('x');
    await page.clock.runFor(6000);
    await expect(where(page)).toContainText('Throw 9 of 10');
  });

  test('a tap on the tick of a throw goes there, and its link opens there, copied by one key', async ({ page, server, context }) => {
    await context.grantPermissions(['clipboard-read', 'clipboard-write']);
    await page.goto(`${server.address}/playback/s1`);
    await expect.poll(() => ticks(page)).toBe(10);
    await tapAt(page, 11 / 14); // the twelfth of fifteen facts
    await expect(where(page)).toContainText('Throw 8 of 10');
    await page.keyboard.press('c');
    await expect(page.locator('.throw-link')).toContainText('Link copied');
    const link = await page.evaluate(() => navigator.clipboard.readText());
    expect(link).toBe(`${server.address}/playback/s1?throw=12`);
    await page.goto(link);
    await expect(where(page)).toContainText('Throw 8 of 10');
    await expect(player(page)).toHaveAttribute('data-mode', 'paused');
  });

  test('a throw that is held is laid under each throw that is stepped to, and a link brings both back', async ({ page, server }) => {
    await page.goto(`${server.address}/playback/s1?throw=10`);
    await expect(where(page)).toContainText('Throw 6 of 10');
    await page.keyboard.press('h');
    await expect(page.getByText('Throw 6 is held. Step to another throw')).toBeVisible();
    await page.keyboard.press('ArrowRight');
    const two = page.getByRole('region', { name: 'Throw 6 against Throw 7' });
    await expect(two.locator('.lettered')).toHaveCount(2);
    await expect(two.locator('tbody tr').first()).toContainText(/^Speed\d/);
    await expect(page.locator('.session-strip .held')).toHaveAttribute('data-place', '10');
    await page.keyboard.press('ArrowRight');
    await expect(page).toHaveURL(/throw=12.*against=10/);
    await page.reload();
    await expect(page.getByRole('region', { name: 'Throw 6 against Throw 8' })).toBeVisible();
    await expectAccessible(page);
    await page.keyboard.press('h');
    await expect(page.locator('.wall-place-words')).toBeVisible();
  });

  test('the scrubber has every throw as a tick, and stays exactly where the hand has put it', async ({ page, server }) => {
    await page.goto(`${server.address}/playback/s1`);
    await expect.poll(() => ticks(page)).toBe(10);
    const box = (await scrubber(page).boundingBox())!;
    await page.mouse.move(box.x + 12, box.y + box.height / 2);
    await page.mouse.down();
    for (const share of [0.25, 0.5, 0.7]) {
      await page.mouse.move(box.x + 12 + share * (box.width - 24), box.y + box.height / 2);
      const value = Number(await scrubber(page).inputValue());
      expect(Math.abs(value / 28_000 - share)).toBeLessThan(0.01);
      // Facts come every 2 s of the folded timeline.
      await expect(player(page)).toHaveAttribute('data-place', String(1 + Math.floor(value / 2000)));
    }
    await page.mouse.up();
    const rested = await scrubber(page).inputValue();
    await expect(scrubber(page)).toHaveAttribute('aria-valuetext', /^Throw \d+ of 10, 15:0\d:\d\d$/);
    expect(await scrubber(page).inputValue()).toBe(rested);
  });

  test('a link opens at its throw, paused, and the address follows the hand', async ({ page, server }) => {
    await page.goto(`${server.address}/playback/s1?throw=12`);
    await expect(player(page)).toHaveAttribute('data-place', '12');
    await expect(page.locator('.wall-place-words')).toHaveText('2 in glove side');
    await page.keyboard.press('ArrowRight');
    await expect(page).toHaveURL(/[?&]throw=13\b/);
    await page.reload();
    await expect(player(page)).toHaveAttribute('data-place', '13');
    await expect(player(page)).toHaveAttribute('data-mode', 'paused');
  });

  for (const [language, width, height, theme] of [['en', 1920, 1080, 'light'], ['es', 390, 844, 'dark'], ['es', 1920, 1080, 'light'], ['en', 820, 1180, 'dark']] as const) {
    test(`passes the accessibility check in ${language} at ${width}×${height}, ${theme}`, inProve(), async ({ page, server }) => {
      await page.setViewportSize({ width, height });
      await page.goto(`${server.address}/playback/s1?lang=${language}&theme=${theme}&throw=13`);
      await page.locator('g.mark').first().waitFor();
      await expectAccessible(page);
      await page.locator('.keys').click();
      await expectAccessible(page);
      expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBe(0);
      await page.goto(`${server.address}/playback?lang=${language}&theme=${theme}`);
      await page.locator('table').waitFor();
      await expectAccessible(page);
      expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBe(0);
    });
  }
});

test('two sessions stand side by side, chosen from the list, moved alone or together, their throws over each other, and a link brings all of it back', async ({ page, server, coach, device }) => {
  await sitting(coach, device);
  await coach.say({ kind: 'session-closed', session: 's1' });
  await coach.say(opening('s2', { ...ATHLETE, id: 'ilse', name: 'Ilse Brandvold', hand: 'left' }));
  await coach.say({ kind: 'intent-set', session: 's2', intent: 'four-seam' });
  for (const sequence of [21, 22, 23]) await device.throws(sequence, easyFrame(FASTBALL));
  await coach.say({ kind: 'session-closed', session: 's2' });
  await page.goto(`${server.address}/playback/s1?throw=3`);
  await page.getByRole('link', { name: 'Beside another session' }).click();
  await expect(page.getByRole('heading', { name: 'Choose the session to put beside' })).toBeVisible();
  await page.getByRole('row', { name: /Ilse/ }).getByRole('link').first().click();
  const half = page.locator('.half');
  await expect(half).toHaveCount(2);
  const throwsOf = async (first: string, second: string) => {
    await expect(half.nth(0).locator('.where')).toContainText(first);
    await expect(half.nth(1).locator('.where')).toContainText(second);
  };
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('1');
  await page.keyboard.press('ArrowRight');
  await throwsOf('Throw 1 of 10', 'Throw 1 of 3');
  await page.getByRole('button', { name: 'Move both together' }).click();
  await page.keyboard.press('ArrowRight');
  await throwsOf('Throw 2 of 10', 'Throw 2 of 3');
  await page.keyboard.press('a');
  await expect(page.getByRole('region', { name: 'Throw 2 against Throw 2' })).toContainText('different hands');
  await expect(page).toHaveURL(/over=1/);
  await expect(page).toHaveURL(/[?&]throw=4/);
  await expect(page).toHaveURL(/beside-throw=19/);
  await page.reload();
  await throwsOf('Throw 2 of 10', 'Throw 2 of 3');
  await expect(page.getByRole('region', { name: 'Throw 2 against Throw 2' })).toBeVisible();
  await expectAccessible(page);
  await page.keyboard.press('a');
  for (const size of [{ width: 1920, height: 1080 }, { width: 390, height: 844 }]) {
    await page.setViewportSize(size);
    await expectAccessible(page);
    await expectWordsApart(page);
  }
});

test('a session that is still open is followed until it is touched, says how far behind it is, and returns to live by one key and one button', async ({ page, server, coach, device }) => {
  keepBeating(device);
  await sitting(coach, device);
  const asked: string[] = [];
  page.on('request', (request) => asked.push(new URL(request.url()).pathname));
  await page.goto(`${server.address}/playback/s1`);
  await expect(player(page)).toHaveAttribute('data-mode', 'following');
  await expect(page.getByRole('status')).toHaveText('Live');
  await device.throws(11, easyFrame(WORKED_THROWS[1]!));
  await expect(where(page)).toContainText('Throw 11 of 11');
  await expect(page.locator('.wall-place-words')).toHaveText('2 in short');

  await page.keyboard.press('ArrowLeft');
  await expect(page.getByRole('status')).toHaveText(/^Behind live by \d+:\d\d$/);
  await device.throws(12, easyFrame(WORKED_THROWS[0]!));
  await expect(where(page)).toContainText('Throw 10 of 12');
  await page.keyboard.press('l');
  await expect(where(page)).toContainText('Throw 12 of 12');
  await expect(page.getByRole('status')).toHaveText('Live');
  await page.keyboard.press('Home');
  await page.getByRole('button', { name: 'Back to live' }).click();
  await expect(player(page)).toHaveAttribute('data-mode', 'following');
  await expect(page).not.toHaveURL(/throw=/);

  await coach.say({ kind: 'session-closed', session: 's1' });
  await expect(player(page)).toHaveAttribute('data-mode', 'paused');
  await expect(page.getByRole('status')).toHaveText(/^Played back/);
  // The whole recording once; then only what came behind it.
  expect(asked.filter((address) => address.startsWith('/api/sessions/s1'))).toEqual(['/api/sessions/s1', ...[14, 15, 16].map((place) => `/api/sessions/s1/since/${place}`)]);
});

test('a throw is bookmarked by one key and a note written by another, live and long after, and both are facts that say when', async ({ page, server, coach, device }) => {
  await sitting(coach, device);
  await page.goto(`${server.address}/playback/s1`);
  await expect(where(page)).toContainText('Throw 10 of 10');
  await page.keyboard.press('k');
  await expect(page.getByRole('button', { name: 'Bookmarked' })).toHaveAttribute('aria-pressed', 'true');
  await coach.say({ kind: 'session-closed', session: 's1' });
  await expect(player(page)).toHaveAttribute('data-mode', 'paused');
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('ArrowLeft');
  await expect(where(page)).toContainText('Throw 9 of 10');
  await page.keyboard.press('t');
  await page.keyboard.type('Wrist stayed behind it, x ? k');
  await page.keyboard.press('Enter');
  const remarks = page.locator('.remark');
  await expect(remarks).toHaveText([/^Throw 9, Changeup A.*Wrist stayed behind it, x \? k.*written .* after the session$/, /^Throw 10, Changeup A.*Bookmark$/]);
  await expect(page.locator('.session-strip .flags path')).toHaveCount(2);
  await page.getByRole('textbox').blur();
  await remarks.nth(1).click();
  await expect(where(page)).toContainText('Throw 10 of 10');
  await page.getByRole('button', { name: 'Take the bookmark off throw 10' }).click();
  await expect(remarks).toHaveCount(1);
  const { facts } = (await (await fetch(`${server.address}/api/sessions/s1`)).json()) as Recorded;
  expect(facts.slice(-4).map(({ said }) => said)).toMatchObject([{ kind: 'throw-bookmarked', place: 14, on: true }, { kind: 'session-closed' }, { kind: 'note-written', place: 13 }, { kind: 'throw-bookmarked', place: 14, on: false }]);
});

test('an older throw that is moved into an open session comes into the recording that is followed', async ({ page, server, coach, device }) => {
  await coach.say(opening('s0', { ...ATHLETE, id: 'ilse', name: 'Ilse Brandvold' }));
  await device.throws(1, easyFrame(FASTBALL));
  await coach.say({ kind: 'session-closed', session: 's0' });
  await coach.say(opening('s1'));
  await page.goto(`${server.address}/playback/s1`);
  await expect(where(page)).toContainText('No throw in this session');
  await coach.say({ kind: 'throws-moved', places: [2], session: 's1' });
  await expect(where(page)).toContainText('Throw 1 of 1');
  await expect(page.locator('.wall-count')).toContainText('1 throw');
});

test('scrubbing through 230 throws shows each place as it was, of which the first are no longer on the picture at the end', async ({ page, server }) => {
  const slice = sliceOf(longSession(LONG), LONG_SESSION)!;
  await page.route(`**/api/sessions/${LONG_SESSION}`, (route) => route.fulfill({ json: { session: LONG_SESSION, mound: 'north-1', log: 'any', ...slice } }));
  await page.goto(`${server.address}/playback/${LONG_SESSION}?windows=1`);
  await expect.poll(() => ticks(page)).toBe(LONG);
  const checkpoints = checkpointsOf(slice, LONG_SESSION);
  const { timelineMs } = recordingOf(checkpoints, true);
  const applied = [...checkpoints.entersAt.values()];
  const drawn = page.locator('.separation-plane g.mark');
  for (const number of [LONG, 12, 201, 200, 11]) {
    const view = moundView(ledgerAt(checkpoints, applied[number - 1]!), LONG_SESSION);
    const places = view.throws.filter(({ separation }) => typeof separation?.verticalM === 'number' && typeof separation.armSideM === 'number').map(({ place }) => String(place));
    expect(places).toHaveLength(Math.min(number, 200));
    await scrubber(page).fill(String(timelineMs[applied[number - 1]! - 1]!));
    await expect(where(page)).toContainText(`Throw ${number} of ${LONG}`);
    await expect(drawn.last()).toHaveAttribute('data-place', places.at(-1)!);
    expect(await drawn.evaluateAll((marks) => marks.map((mark) => mark.getAttribute('data-place')))).toEqual(places);
  }
  // Before the fifth fastball there is nothing to hold a throw against; the count says where one is.
  await scrubber(page).fill(String(timelineMs[applied[0]! - 1]!));
  await expect(where(page)).toContainText(`Throw 1 of ${LONG}`);
  await expect(page.locator('.wall-forming-count')).toContainText('1 of 5');
});
