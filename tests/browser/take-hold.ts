import type { Locator, Page } from '@playwright/test';

/** Presses the pointer on the middle of what can be dragged, once that stands still, and tells where it lies. */
export async function takeHold(page: Page, handle: Locator): Promise<NonNullable<Awaited<ReturnType<Locator['boundingBox']>>>> {
  await handle.hover();
  await page.mouse.down();
  return (await handle.boundingBox())!;
}
