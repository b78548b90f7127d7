import { fileURLToPath } from 'node:url';
import { expect, test, type Page } from '@playwright/test';
import { build, type Rolldown } from 'vite';
import type { drawScene } from '../drawings/entry.ts';
import { GAP_SCENES, GRASPED_SCENES, PLANE_SCENES, PLATE_SCENES, SEAM_SCENES } from '../../web/gallery/hard-places.ts';
import type { Room } from '../../web/gallery/scene.ts';
import { overlaps, readTexts } from './reading.ts';

/** Rooms beside the plane on a Wall, alone and above the windows; in a hand; and of the plane on Wall and Bench. */
const BESIDE: readonly Room[] = [{ width: 511, height: 860, textPx: 47.2 }, { width: 511, height: 610, textPx: 47.2 }, { width: 358, height: 430, textPx: 17 }];
const PLANES: readonly Room[] = [{ width: 830, height: 930, textPx: 47.2 }, { width: 614, height: 930, textPx: 47.2 }, { width: 480, height: 384, textPx: 15 }];
const SPOKEN = [['en', 'imperial'], ['es', 'metric']] as const;

let parts: { readonly script: string; readonly style: string };
test.beforeAll(async () => {
  parts = await drawingsAlone();
});

for (const [kind, scenes, rooms] of [['seam map', SEAM_SCENES, BESIDE], ['gap line', GAP_SCENES, BESIDE], ['separation plane', PLANE_SCENES, PLANES], ['plate', PLATE_SCENES, BESIDE]] as const) {
  test(`the ${kind} keeps its words apart and inside, at every size and in both languages, and drawn again is the same`, async ({ page }) => {
    await prepare(page);
    for (const name of Object.keys(scenes)) {
      for (const room of rooms) {
        for (const [language, units] of SPOKEN) {
          const where = `${name}, ${room.width} × ${room.height}, ${language}`;
          const first = await draw(page, name, language, units, room);
          expect(await draw(page, name, language, units, room), where).toBe(first);
          const texts = await readTexts(page);
          expect(texts.length, where).toBeGreaterThan(0);
          expect(overlaps(texts), where).toEqual([]);
          const beyond = texts.filter(({ left, right, top, bottom, capitalPx }) =>
            left < 19 || right > 21 + room.width || (top + bottom) / 2 - capitalPx / 2 < 19 || (top + bottom) / 2 + capitalPx / 2 > 21 + room.height);
          expect(beyond.map(({ text }) => text), where).toEqual([]);
        }
      }
    }
  });
}

test('the gap line leaves a hole where moments are missing, and draws no lone value away', async ({ page }) => {
  await prepare(page);
  await draw(page, 'six balls', 'en', 'imperial', BESIDE[0]!);
  await expect(page.locator('path.gap')).toHaveCount(1);
  await draw(page, 'moments missing', 'en', 'imperial', BESIDE[0]!);
  await expect(page.locator('path.gap')).toHaveCount(3);
});

test('the seam map draws the near seam whole and the far one broken, and none where no seam is known', async ({ page }) => {
  await prepare(page);
  await draw(page, 'four seams a turn, with all that is known', 'en', 'imperial', BESIDE[0]!);
  const dashes = (selector: string): Promise<string> => page.locator(`g.seam ${selector}`).first().evaluate((path) => getComputedStyle(path).strokeDasharray);
  expect(await dashes('.seam-line.near')).toBe('none');
  expect(await dashes('.seam-line.far')).not.toBe('none');
  // Thrown with a fifth of its spin along the flight the front does not run along the equator, but still meets four seams.
  await expect(page.locator('g.passing circle.pass')).toHaveCount(4);
  await expect(page.locator('text.ring')).toHaveText('4 seams a turn');
  await draw(page, 'axis alone, nothing unexplained to be seen', 'en', 'imperial', BESIDE[0]!);
  await expect(page.locator('g.seam path')).toHaveCount(0);
  await expect(page.locator('g.passing circle')).toHaveCount(0);
  await expect(page.locator('g.axis-end circle')).toHaveCount(2);
});

test('the arrow of unexplained movement starts in its ellipse and ends at the rim of the last throw', async ({ page }) => {
  await prepare(page);
  await draw(page, 'last throw above the target', 'en', 'imperial', PLANES[0]!);
  const { foot, tip, ellipse, mark } = await page.evaluate(() => {
    const shaft = /M([-\d.]+),([-\d.]+)L([-\d.]+),([-\d.]+)M[^M]+$/.exec(document.querySelector('.unexplained-arrow')!.getAttribute('d')!)!.slice(1).map(Number);
    const placeOf = (selector: string): number[] => /translate\(([-\d.]+),([-\d.]+)\)/.exec(document.querySelector(selector)!.getAttribute('transform')!)!.slice(1).map(Number);
    const { x, y, width, height } = document.querySelector<SVGGElement>('.mark.newest path')!.getBBox();
    return { foot: shaft.slice(0, 2), tip: shaft.slice(2), ellipse: placeOf('ellipse.doubt'), mark: [x + width / 2, y + height / 2] };
  });
  const between = (a: readonly number[], b: readonly number[]): number => Math.hypot(a[0]! - b[0]!, a[1]! - b[1]!);
  expect(between(foot, ellipse)).toBeLessThan(0.01);
  // The newest mark has a radius of 0.27 × 1.35 of the text.
  expect(between(tip, mark)).toBeCloseTo(47.2 * 0.27 * 1.35, 1);
});

test('on Bench neither the words of a miss nor a letter lie under a grip of the target zone', async ({ page }) => {
  await prepare(page);
  for (const name of Object.keys(GRASPED_SCENES)) {
    await draw(page, name, 'en', 'imperial', PLANES[2]!);
    const { grips, covered } = await page.evaluate(() => {
      /** Capitals are 0.7 of the text's size, about the middle of its line. */
      const inkOf = (text: Element): DOMRect => {
        const { left, top, width, height } = text.getBoundingClientRect();
        const capital = 0.7 * Number.parseFloat(getComputedStyle(text).fontSize);
        return new DOMRect(left, top + (height - capital) / 2, width, capital);
      };
      const boxes = [...document.querySelectorAll('.handle .knob')].map((knob) => knob.getBoundingClientRect());
      const texts = [...document.querySelectorAll('.miss-text tspan, .trial-letter')].map((text) => ({ said: text.textContent, box: inkOf(text) }));
      const lies = (a: DOMRect, b: DOMRect): boolean => Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1 && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 1;
      return { grips: boxes.length, covered: texts.filter(({ box }) => boxes.some((grip) => lies(grip, box))).map(({ said }) => said) };
    });
    expect(grips, name).toBe(3);
    expect(covered, name).toEqual([]);
  }
});

async function prepare(page: Page): Promise<void> {
  await page.setViewportSize({ width: 1000, height: 1000 });
  await page.setContent(`<style>${parts.style}</style>`);
  await page.addScriptTag({ content: parts.script });
  await page.evaluate(() => Promise.all(['400 20px "Hanken Grotesk Variable"', '650 20px "Hanken Grotesk Variable"'].map((font) => document.fonts.load(font))));
}

function draw(page: Page, ...scene: Parameters<typeof drawScene>): Promise<string> {
  return page.evaluate((asked) => (globalThis as unknown as { drawings: { drawScene: typeof drawScene } }).drawings.drawScene(...asked), scene);
}

/** The charts and what fills them, bundled for the browser as the screens are, without any screen. */
async function drawingsAlone(): Promise<{ script: string; style: string }> {
  const bundles = (await build({
    configFile: false,
    logLevel: 'error',
    build: { write: false, target: 'es2023', lib: { entry: fileURLToPath(new URL('../drawings/entry.ts', import.meta.url)), formats: ['iife'], name: 'drawings', cssFileName: 'drawings' } },
  })) as Rolldown.RolldownOutput[];
  const files = bundles.flatMap(({ output }) => [...output]);
  const script = files.find((file) => file.type === 'chunk')!.code;
  const style = files.flatMap((file) => (file.type === 'asset' && file.fileName.endsWith('.css') ? [String(file.source)] : [])).join('\n');
  return { script, style };
}
