import { expect, type Page } from '@playwright/test';
import { easyFrame, WORKED_THROWS } from './by-hand.ts';
import { changeupIsNext } from './changeup-next.ts';
import type { TestCoach } from './coach.ts';
import type { TestDevice } from './device.ts';
import type { TestServer } from './server.ts';
import { test } from './with-server.ts';

/** A Wall on which five fastballs and a changeup are shown. */
async function hangsWithOneChangeup(page: Page, server: TestServer, coach: TestCoach, device: TestDevice): Promise<void> {
  await page.setViewportSize({ width: 1920, height: 1080 });
  await page.goto(`${server.address}/wall/north-1`);
  await changeupIsNext(coach, device);
  await device.throws(6, easyFrame(WORKED_THROWS[3]!));
  await expect(page.locator('.wall-count')).toContainText('6 throws');
}

test('a throw writes into the pictures of the Wall only what says something else, and its mark is whole in the first frame', async ({ page, server, coach, device }) => {
  await hangsWithOneChangeup(page, server, coach, device);
  await page.evaluate(watchPictures);
  await device.throws(7, easyFrame(WORKED_THROWS[3]!));
  await expect(page.locator('.wall-count')).toContainText('7 throws');
  const seen = await page.evaluate(() => (globalThis as unknown as { seen: Seen }).seen);
  expect(seen.written).toContain('g.marks childList');
  expect(seen.inVain).toEqual([]);
  expect(seen.moving).toBe(0);
});

test('the mark of a throw is painted in a frame before all that is said of it; where the plane is ruled anew for it, with it', async ({ page, server, coach, device }) => {
  await hangsWithOneChangeup(page, server, coach, device);
  await page.evaluate(watchFrames);
  const framesOf = async (place: number): Promise<Frames> => {
    await expect(page.locator('.wall-last')).toHaveAttribute('data-place', String(place));
    return page.evaluate((key) => (globalThis as unknown as { seenIn: Record<string, Frames> }).seenIn[key]!, String(place));
  };
  await device.throws(7, easyFrame(WORKED_THROWS[0]!));
  const inReach = await framesOf(11);
  expect(inReach.mark, 'the mark was seen').toBeGreaterThanOrEqual(0);
  expect(inReach.mark).toBeLessThan(inReach.words);
  await expect(page.locator('.wall-plane g.mark.newest'), 'what came ahead is on the plane now, and nowhere else').toHaveCount(1);
  await expect(page.locator('.separation-plane g.mark.newest')).toHaveAttribute('data-place', '11');
  await device.throws(8, easyFrame({ ...WORKED_THROWS[0]!, upIn: -4 }));
  const beyond = await framesOf(12);
  expect(beyond.mark).toBe(beyond.words);
});

/** The frame in which mark and words of a throw were written. */
interface Frames {
  mark: number;
  words: number;
}

/** Runs in the page: counts frames, and notes in which a throw's mark and its words come. */
function watchFrames(): void {
  const seenIn: Record<string, Frames> = {};
  Object.assign(globalThis, { seenIn });
  let frame = 0;
  const count = (): void => {
    frame += 1;
    requestAnimationFrame(count);
  };
  requestAnimationFrame(count);
  const note = (what: keyof Frames, selector: string): void => document.querySelectorAll(selector).forEach((written) => {
    const seen = (seenIn[written.getAttribute('data-place')!] ??= { mark: -1, words: -1 });
    if (seen[what] === -1) seen[what] = frame;
  });
  new MutationObserver(() => {
    note('mark', '.wall-plane g.mark.newest');
    note('words', '.wall-last');
  }).observe(document.body, { subtree: true, childList: true, attributes: true, attributeFilter: ['data-place'] });
}

interface Seen {
  /** Attributes and texts, each by the element that it stands on. */
  readonly written: string[];
  /** Those that say what they said before. */
  readonly inVain: string[];
  /** Animations that run once all is written. */
  moving: number;
}

/** Runs in the page: notes all that is written into plane and rail from now on. */
function watchPictures(): void {
  const seen: Seen = { written: [], inVain: [], moving: 0 };
  Object.assign(globalThis, { seen });
  const named = (node: Node): string => (node instanceof Element ? [node.localName, ...node.classList].join('.') : named(node.parentNode!));
  const watcher = new MutationObserver((records) => {
    for (const { type, target, attributeName, oldValue, addedNodes, removedNodes } of records) {
      const name = `${named(target)} ${attributeName ?? type}`;
      seen.written.push(name);
      const same = type === 'attributes' ? (target as Element).getAttribute(attributeName!) === oldValue : addedNodes.length > 0 && addedNodes[0]!.textContent === removedNodes[0]?.textContent;
      if (same) seen.inVain.push(name);
    }
    seen.moving = Math.max(seen.moving, document.getAnimations().length);
  });
  for (const picture of document.querySelectorAll('.wall-plane svg, .wall-rail svg')) watcher.observe(picture, { subtree: true, childList: true, attributes: true, attributeOldValue: true });
}
