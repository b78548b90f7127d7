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

for (const [theme, query] of [['dark', 'theme=dark'], ['light', 'theme=light&lang=es&units=metric']] as const) {
  test(`the gallery, ${theme}`, async ({ browser }) => {
    await withScene('empty', async (server) => {
      const page = await browser.newPage({ viewport: { width: 1500, height: 1000 }, reducedMotion: 'reduce' });
      await page.goto(`${server.address}/gallery?${query}`);
      await settled(page, 'empty');
      await page.screenshot({ path: `docs/screens/gallery-${theme}.png`, fullPage: true, animations: 'disabled' });
      await page.close();
    });
  });
}
