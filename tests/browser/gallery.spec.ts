import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, type Page } from '@playwright/test';
import { STATES_IN_SPANISH } from '../../web/words/gallery.ts';
import { expectAccessible } from './fits.ts';
import { inProve } from './in-prove.ts';
import { overlaps, readTexts } from './reading.ts';
import { test } from './with-server.ts';

const GOLDEN = fileURLToPath(new URL('../pictures/gallery.golden.json', import.meta.url));

/** What a picture is made of: how many parts of each kind, and its words in their order. */
type Made = Readonly<Record<string, { readonly parts: Readonly<Record<string, number>>; readonly words: readonly string[] }>>;

/**
 * Pixels differ with the rasteriser of a machine, and so would golden images of them: a change of Chromium would fail them all.
 * What does not differ is what a picture is made of; that its words lie apart and inside it is measured.
 */
async function madeOf(page: Page): Promise<Made> {
  return page.evaluate(() => {
    const made: Record<string, { parts: Record<string, number>; words: string[] }> = {};
    for (const figure of document.querySelectorAll<HTMLElement>('figure[data-state]')) {
      const name = `${figure.closest<HTMLElement>('[data-chart]')!.dataset['chart']}: ${figure.dataset['state']}`;
      const parts: Record<string, number> = {};
      for (const part of figure.querySelectorAll('svg *:not(title, desc, tspan)')) {
        const kind = `${part.tagName}.${part.getAttribute('class') ?? ''}`;
        parts[kind] = (parts[kind] ?? 0) + 1;
      }
      const words = [...figure.querySelectorAll('svg text')].filter((text) => !text.classList.contains('left-out')).map((text) => text.textContent!.trim()).filter((text) => text !== '');
      made[name] = { parts: Object.fromEntries(Object.entries(parts).sort()), words: words.sort() };
    }
    return made;
  });
}

async function openGallery(page: Page, address: string): Promise<void> {
  await page.setViewportSize({ width: 1500, height: 1000 });
  await page.goto(address);
  await page.locator('[data-chart="clock"] figure').last().waitFor();
  await page.evaluate(() => document.fonts.ready);
  await expect(page.locator('figure svg:empty')).toHaveCount(0);
}

test('every picture is made of what it was made of, and every state of it can be read', async ({ server, page }) => {
  await openGallery(page, `${server.address}/gallery?theme=dark`);
  const made = await madeOf(page);
  if (process.env['OFFPACE_WRITE_GOLDEN'] === '1') writeFileSync(GOLDEN, `${JSON.stringify(made, null, 1)}\n`);
  expect(Object.keys(made).length).toBeGreaterThan(40);
  expect(made).toEqual(JSON.parse(readFileSync(GOLDEN, 'utf8')));
  await expectAccessible(page);
});

test('pictures that were drawn before their letters came are drawn again in them', async ({ server, page }) => {
  let send = (): void => {};
  const asked = new Promise<void>((resolve) => {
    send = resolve;
  });
  await page.route('**/*.woff2', async (route) => {
    await asked;
    await route.continue();
  });
  await page.setViewportSize({ width: 1500, height: 1000 });
  await page.goto(`${server.address}/gallery?theme=dark`, { waitUntil: 'commit' });
  await page.locator('[data-chart="clock"] figure').last().waitFor();
  await expect(page.locator('figure svg:empty')).toHaveCount(0);
  const inOtherLetters = await madeOf(page);
  send();
  await expect.poll(() => madeOf(page)).toEqual(JSON.parse(readFileSync(GOLDEN, 'utf8')));
  expect(inOtherLetters).not.toEqual(await madeOf(page));
});

test('in Spanish, in the light and in centimetres every picture keeps its words apart, and every state has its name', inProve(), async ({ server, page }) => {
  await openGallery(page, `${server.address}/gallery?theme=light&lang=es&units=metric`);
  // Marks that lie over each other do so with their letters.
  expect(overlaps((await readTexts(page)).filter(({ text }) => text.length > 1))).toEqual([]);
  const states = await page.locator('figure').evaluateAll((all) => all.map((figure) => [(figure as HTMLElement).dataset['state']!, figure.querySelector('figcaption')!.textContent]));
  expect(states.filter(([name, said]) => said === name)).toEqual([]);
  expect(Object.keys(STATES_IN_SPANISH).filter((name) => !states.some(([state]) => state === name))).toEqual([]);
});
