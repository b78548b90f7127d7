import type { Page } from '@playwright/test';

/** How many throws the ticks of the strip stand for. */
export async function ticks(page: Page): Promise<number> {
  return page.locator('.session-strip .ticks path').evaluateAll((all) => all.reduce((sum, path) => sum + Number((path as SVGPathElement).dataset['throws']), 0));
}

/** Taps the strip where that share of the timeline has gone by. */
export async function tapAt(page: Page, share: number): Promise<void> {
  const strip = (await page.locator('.session-strip').boundingBox())!;
  await page.mouse.click(strip.x + 12 + share * (strip.width - 24), strip.y + strip.height / 3);
}
