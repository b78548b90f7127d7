import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, type Page } from '@playwright/test';
import { opening } from './coach.ts';
import { expectAccessible, expectWordsApart } from './fits.ts';
import { test } from './with-server.ts';

const EXAMPLE = fileURLToPath(new URL('../../docs/import/bullpens.csv', import.meta.url));

test('who has no file yet is shown what one looks like, takes an example along, and finds every column of it known, on a phone too', async ({ server, page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  for (const { language, example, known, file, row, columns } of [
    { language: 'en', example: 'Save this file to try it', known: 'Words that are known in the head of a column', file: 'File (CSV or JSON Lines)', row: 'Tilt tilt, spin tilt', columns: 'What each column is' },
    { language: 'es', example: 'Guardar este archivo para probar', known: 'Palabras conocidas en el encabezado de una columna', file: 'Archivo (CSV o JSON Lines)', row: 'Inclinación tilt, spin tilt', columns: 'Qué es cada columna' },
  ]) {
    await page.goto(`${server.address}/import?lang=${language}`);
    await page.getByText(known).click();
    await expect(page.getByRole('row', { name: row })).toBeVisible();
    await expectAccessible(page, `no file yet, ${language}`);
    await expectWordsApart(page);
    const saving = page.waitForEvent('download');
    await page.getByRole('button', { name: example }).click();
    const saved = await saving;
    await page.getByLabel(file).setInputFiles({ name: saved.suggestedFilename(), mimeType: 'text/csv', buffer: readFileSync(await saved.path()) });
    await expect(page.getByRole('heading', { name: columns })).toBeVisible();
    const choices = page.locator('.import-columns tbody tr');
    await expect(choices).toHaveCount(9);
    expect(await choices.locator('td:nth-child(3) select').evaluateAll((all) => all.filter((one) => (one as HTMLSelectElement).value === ''))).toEqual([]);
    // Each choice has a row of its own.
    const widths = await choices.locator('select').evaluateAll((all) => all.map((one) => Math.round(one.getBoundingClientRect().width)));
    expect(widths.filter((width) => width < 350)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBe(0);
  }
});

async function someoneNew(page: Page, name: string, hand: string): Promise<void> {
  await page.getByLabel(`“${name}” is`).selectOption({ label: 'someone new …' });
  await page.getByLabel(hand, { exact: true }).check();
  await page.getByLabel('Birth year').fill('2006');
  await page.getByRole('button', { name: `Take ${name}` }).click();
  await expect(page.getByLabel(`“${name}” is`)).toHaveValue(/-/);
}

test('a coach brings a file in: sees what each column was taken for and why, corrects it, says whose it is, sees what is refused, and stores the rest beside an open session', async ({ server, coach, page }) => {
  await coach.say(opening('now'));
  await page.setViewportSize({ width: 1440, height: 900 });
  await page.goto(`${server.address}/bench/north-1`);
  await page.getByRole('button', { name: 'Session', exact: true }).click();
  await page.getByRole('link', { name: 'Bring recorded throws in' }).click();
  await page.getByLabel('File (CSV or JSON Lines)').setInputFiles(EXAMPLE);
  const rowOf = (head: string) => page.getByRole('row').filter({ has: page.getByRole('rowheader', { name: head, exact: true }) });
  await expect(rowOf('Velocidad (mph)')).toContainText('the head says “velocidad”; the unit stands there: mph');
  await expect(rowOf('Notas').getByRole('combobox')).toHaveValue('');
  await expect(rowOf('Inclinación')).toContainText('1:00');
  await expectAccessible(page, 'the columns of a file');
  await expectWordsApart(page);

  await expect(page.getByRole('button', { name: 'Check the file' })).toBeEnabled();
  await page.getByLabel('Is: Notas').selectOption({ label: 'Trial' });
  await expect(rowOf('Notas')).toContainText('said by you');
  await page.getByLabel('Is: Notas').selectOption({ label: 'not read' });
  await someoneNew(page, 'Alba Inventada', 'Right-handed');
  await page.getByLabel('Name of the recipe').fill('Our spreadsheet');
  await page.getByRole('button', { name: 'Keep as recipe' }).click();
  await expect(page.getByText('Kept as “Our spreadsheet”.')).toBeVisible();

  await page.getByRole('button', { name: 'Check the file' }).click();
  await expect(page.getByRole('heading', { name: '7 good throws in 1 session of 1 athlete' })).toBeVisible();
  await expect(page.getByRole('row', { name: /^10 / })).toContainText('Velocidad (mph)A speed of 76.9 m/s (172 mph) is outside');
  const saving = page.waitForEvent('download');
  await page.getByRole('link', { name: 'Save all refused rows as CSV' }).click();
  expect(readFileSync(await (await saving).path(), 'utf8')).toMatch(/^line,code,column,why\n10,impossible,[^\n]+\n11,unknown-athlete,/);
  await expectAccessible(page, 'what a file came to');

  await page.getByRole('button', { name: 'Back to the columns' }).click();
  await someoneNew(page, 'Bruno Inventado', 'Left-handed');
  await page.getByRole('button', { name: 'Check the file' }).click();
  await page.getByRole('button', { name: 'Import the 9 good throws without the refused' }).click();
  await expect(page.getByRole('heading', { name: '9 throws in 3 sessions stored.' })).toBeVisible();
  await page.getByRole('link', { name: 'See the recorded sessions' }).click();
  await expect(page.getByRole('row', { name: /Alba Inventada/ })).toContainText('From bullpens.csv, imported');
  await page.getByRole('link', { name: 'Alba Inventada' }).click();
  await expect(page.locator('.player-title')).toContainText('May 3, 2024 · north-1 · From bullpens.csv');

  await page.setViewportSize({ width: 820, height: 1180 });
  await page.goto(`${server.address}/import?lang=es`);
  await page.getByLabel('Archivo (CSV o JSON Lines)').setInputFiles(EXAMPLE);
  await expect(rowOf('Velocidad (mph)')).toContainText('de la receta «Our spreadsheet»');
  await expectAccessible(page, 'the columns of a file on a tablet, in Spanish');
  await expectWordsApart(page);
  const mounds = (await (await page.request.get(`${server.address}/api/mounds`)).json()) as { openSessions: { id: string; active: boolean }[] }[];
  expect(mounds[0]!.openSessions).toMatchObject([{ id: 'now', active: true }]);
});

/** Brings the throws of a file in as the screen does, every row of one athlete. */
async function bringIn(page: Page, address: string, name: string, csv: string): Promise<void> {
  const { layout } = (await (await page.request.post(`${address}/api/imports/look`, { data: Buffer.from(csv), headers: { 'content-type': 'application/octet-stream' } })).json()) as { layout: object };
  const athlete = { id: 'alba-1', name: 'Alba Inventada', hand: 'right', birthYear: 2006, mainFastball: 'four-seam', units: 'imperial', language: 'es' };
  const choices = { athlete, athletes: {}, intents: {}, mound: 'north-1', timeZone: 'America/Chicago', stage: 'mound', distanceM: 18.4404, effort: 'full', day: '2025-05-03', device: 'file', sight: 'full-flight', axis: 'none' };
  const { id } = (await (await page.request.post(`${address}/api/imports`, { data: { name, layout, choices } })).json()) as { id: string };
  await page.request.put(`${address}/api/imports/${id}/file`, { data: Buffer.from(csv), headers: { 'content-type': 'application/octet-stream' } });
  expect((await page.request.post(`${address}/api/imports/${id}/store`, { data: { mode: 'all-or-nothing' } })).status()).toBe(200);
}

test('a coach takes a wrong file back as a whole, after a second question, and no list has its throws any more', async ({ server, page }) => {
  await bringIn(page, server.address, 'right.csv', 'speed (mph)\n80\n81\n');
  await bringIn(page, server.address, 'wrong.csv', 'speed (mph)\n60\n61\n62\n');
  await page.goto(`${server.address}/import`);
  await page.getByRole('button', { name: 'Take wrong.csv back' }).click();
  await expectAccessible(page, 'an import about to be taken back');
  await page.getByRole('button', { name: 'Keep as it is' }).click();
  await page.getByRole('button', { name: 'Take wrong.csv back' }).click();
  await page.getByRole('button', { name: 'Take it back', exact: true }).click();
  await expect(page.getByText('wrong.csv was taken back: 3 throws in 1 session.')).toBeVisible();
  await expect(page.getByRole('button', { name: /^Take .+ back$/ })).toHaveText(['Take right.csv back']);
  await page.goto(`${server.address}/playback?lang=es`);
  await expect(page.getByRole('row', { name: /Alba Inventada/ })).toHaveCount(1);
  await expect(page.getByRole('row', { name: /Alba Inventada/ })).toContainText('right.csv');
});
