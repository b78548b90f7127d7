import { expect, test } from '@playwright/test';
import { playScene, SCENES, SCREENS } from '../browser/scenes.ts';
import { startServer, temporaryFolder } from '../browser/server.ts';

const SIZES = [{ width: 1920, height: 1080 }, { width: 390, height: 844 }] as const;

for (const scene of SCENES) {
  test(`every screen in the scene "${scene}"`, async ({ browser }) => {
    const { folder, remove } = temporaryFolder();
    const server = await startServer(folder);
    const end = await playScene(server, scene);
    for (const viewport of SIZES) {
      const context = await browser.newContext({ viewport, colorScheme: 'dark', reducedMotion: 'reduce' });
      const page = await context.newPage();
      for (const [name, address] of Object.entries(SCREENS)) {
        if (scene === 'empty' && name === 'recording') continue;
        await page.goto(server.address + address);
        await page.evaluate(() => document.fonts.ready);
        await expect(page.locator('h1').first()).toBeVisible();
        await expect(page.locator('[data-standing="connecting"]')).toHaveCount(0);
        if (scene === 'stale' && (name === 'wall' || name === 'glance')) await expect(page.locator('.standing-word')).toHaveAttribute('data-standing', /silent/, { timeout: 20_000 });
        await page.screenshot({ path: `docs/screens/${name}-${scene}-${viewport.width}x${viewport.height}.png`, animations: 'disabled' });
      }
      await context.close();
    }
    end();
    await server.stop();
    remove();
  });
}
