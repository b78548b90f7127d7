import { expect, type Page } from '@playwright/test';
import { comparisonAlpha, verdictOf, type Verdict } from '../../core/coaching/verdict.ts';
import type { ThrowView } from '../../core/facts/views.ts';
import { tallyOf } from '../../core/statistics/tally.ts';

type Reached = Exclude<Verdict, { kind: 'too-few' }>;

/** What core says of B against A, as an athlete's first comparison, from the misses in the server's own view. */
export function verdictOn(throws: readonly ThrowView[]): Reached {
  const misses = (letter: string): number[] => throws.flatMap(({ trial, excluded, miss }) => (trial === letter && excluded === null && miss !== null ? [miss.size] : []));
  const found = verdictOf([{ a: tallyOf(misses('A')), b: tallyOf(misses('B')) }], { alpha: comparisonAlpha(1), smallest: 1 });
  if (found.kind === 'too-few') throw new Error('these are too few throws for a verdict');
  return found;
}

/** On Trials, where three trials stand with C the newest: chooses A and B, opens their comparison, and finds the verdict that core has. */
export async function expectBetter(page: Page, found: Reached): Promise<void> {
  await expect(page.locator('.trial-row .letter')).toHaveText(['C', 'B', 'A']);
  await page.getByRole('checkbox', { name: /trial A, Mound/ }).check();
  await expect(page.getByRole('heading', { name: 'C against A' })).toBeVisible();
  await page.getByRole('checkbox', { name: /trial B, Mound/ }).check();
  await expect(page.getByRole('heading', { name: 'B against A' })).toBeVisible();
  await page.getByRole('button', { name: 'Open comparison 1' }).click();
  expect(found.kind).toBe('better');
  await expect(page.locator('.verdict')).toHaveAttribute('data-verdict', found.kind);
  await expect(page.getByRole('heading', { name: 'B is better than A' })).toBeVisible();
}

/** The report that Trials leads to repeats the verdict, and has a row for each trial. */
export async function expectReported(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'Report' }).click();
  await expect(page.locator('.sheet-verdict')).toContainText('1. B against A: B is better than A.');
  await expect(page.locator('.sheet tbody tr')).toHaveCount(3);
}
