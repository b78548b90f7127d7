import { AxeBuilder } from '@axe-core/playwright';
import { expect, type Page } from '@playwright/test';
import { overlaps, readTexts, type ReadText } from './reading.ts';

/** No violation of the accessibility rules. */
export async function expectAccessible(page: Page, where = page.url()): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html, failureSummary }) => `${html.slice(0, 120)} ${failureSummary ?? ''}`).join(' | ')}`), `axe on ${where}`).toEqual([]);
}

/** Every word is 7:1 on what lies behind it, large ones 4.5:1: the stricter of the two contrasts of WCAG. Looks at some words, or it has measured nothing. */
export async function expectContrast(page: Page): Promise<void> {
  const { violations, passes } = await new AxeBuilder({ page }).withRules(['color-contrast-enhanced']).analyze();
  expect(passes.flatMap(({ nodes }) => nodes).length).toBeGreaterThan(0);
  expect(violations.flatMap(({ nodes }) => nodes.map(({ html, failureSummary }) => `${html.slice(0, 120)} ${failureSummary ?? ''}`))).toEqual([]);
}

/** There is text, none of it is cut off, over another or beyond the sides of the screen. Gives the text. */
export async function expectWordsApart(page: Page, where = page.url()): Promise<readonly ReadText[]> {
  await drawn(page);
  const texts = await readTexts(page);
  const { width } = page.viewportSize()!;
  expect(texts.length, where).toBeGreaterThan(0);
  expect(texts.filter(({ cut, left, right }) => cut || left < -0.5 || right > width + 0.5).map(({ text }) => text), `cut on ${where}`).toEqual([]);
  expect(overlaps(texts), `overlapping on ${where}`).toEqual([]);
  return texts;
}

/** A screen, and what on it a thumb has to find. */
interface Touched {
  /** A selector of all that is looked at. */
  readonly screen: string;
  readonly thumbs: string;
  /** Whether the page may be longer than the screen. */
  readonly scrolls: boolean;
}

export const BENCH: Touched = { screen: '.bench *', thumbs: 'button, a, summary, label:has(input), input:not(label *)', scrolls: false };
export const PLAN: Touched = { screen: '.plan *', thumbs: 'button, nav a, .family label', scrolls: true };

/** Words apart, nothing wider than its room, nothing to scroll sideways, and room for a thumb on everything that is tapped. */
export async function expectFits(page: Page, { screen, thumbs, scrolls }: Touched): Promise<void> {
  await expectWordsApart(page);
  const { looked, faults } = await page.evaluate(([every, tapped, mayScroll]) => {
    const shown = [...document.querySelectorAll<HTMLElement>(every)].filter((element) => element.checkVisibility() && element.closest('svg, .unseen') === null);
    const wide = shown.filter((element) => getComputedStyle(element).display !== 'inline' && element.scrollWidth > element.clientWidth + 1 && element.clientWidth > 0 && element.tagName !== 'INPUT');
    const small = shown.filter((element) => element.matches(tapped) && (element.offsetHeight < 43.5 || element.offsetWidth < 43.5));
    const { scrollWidth, scrollHeight } = document.documentElement;
    const scrolled = [...(scrollWidth > innerWidth ? ['the page scrolls sideways'] : []), ...(!mayScroll && scrollHeight > innerHeight + 1 ? ['the page scrolls'] : [])];
    return { looked: shown.length, faults: [...wide.map((element) => `clipped: ${element.outerHTML}`), ...small.map((element) => `small: ${element.outerHTML}`), ...scrolled] };
  }, [screen, thumbs, scrolls] as const);
  expect(looked, screen).toBeGreaterThan(0);
  expect(faults, page.url()).toEqual([]);
}

/** The letters are there, and what measures itself has seen a new size of the screen and drawn itself for it: that takes a frame. */
export async function drawn(page: Page): Promise<void> {
  await page.evaluate(() => document.fonts.ready);
  await page.evaluate(() => new Promise<void>((resolve) => requestAnimationFrame(() => requestAnimationFrame(() => resolve()))));
}
