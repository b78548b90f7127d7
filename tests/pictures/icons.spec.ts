import { readFileSync } from 'node:fs';
import { test } from '@playwright/test';

const MARK = readFileSync('web/offpace.svg', 'utf8');
/** Phones cut icons to a shape of their own and promise to leave a circle of four fifths of the width. */
const FILLED = MARK.replace('viewBox="0 0 32 32"', 'viewBox="-8 -8 48 48"').replace('<rect width="32" height="32" rx="7"', '<rect x="-8" y="-8" width="48" height="48"');

for (const [name, svg, side] of [['offpace-192', MARK, 192], ['offpace-512', MARK, 512], ['offpace-filled-512', FILLED, 512], ['offpace-filled-180', FILLED, 180]] as const) {
  test(`the icon ${name} for the screens of phones`, async ({ browser }) => {
    const page = await browser.newPage({ viewport: { width: side, height: side } });
    await page.setContent(`<style>body{margin:0}svg{display:block;width:${side}px;height:${side}px}</style>${svg}`);
    await page.screenshot({ path: `web/public/icons/${name}.png`, omitBackground: true });
    await page.close();
  });
}
