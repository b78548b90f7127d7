import { test } from '@playwright/test';
import { SCENES, SCREENS, settled, SIZES, withScene } from '../browser/scenes.ts';

for (const scene of SCENES) {
  test(`every screen in the scene "${scene}"`, async ({ browser }) => {
    await withScene(scene, async (server) => {
      for (const viewport of SIZES) {
        const context = await browser.newContext({ viewport, colorScheme: 'dark', reducedMotion: 'reduce' });
        const page = await context.newPage();
        for (const [name, address] of Object.entries(SCREENS)) {
          if (scene === 'empty' && name === 'recording') continue;
          await page.goto(server.address + address);
          await settled(page, scene);
          await page.screenshot({ path: `docs/screens/${name}-${scene}-${viewport.width}x${viewport.height}.png`, animations: 'disabled' });
        }
        await context.close();
      }
    });
  });
}
