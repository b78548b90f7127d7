import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';

/** Relative luminance and contrast as WCAG 2.2 defines them (W3C 2023, "relative luminance", "contrast ratio"). */
function luminance(hex: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255).map((share) => (share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4));
  return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
}
function contrast(a: string, b: string): number {
  const [dark, light] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (light! + 0.05) / (dark! + 0.05);
}

const css = readFileSync(new URL('../../web/theme.css', import.meta.url), 'utf8');
function tokens(after: string): Record<string, string> {
  const from = css.indexOf(after);
  const block = css.slice(from, css.indexOf('}', from));
  return Object.fromEntries([...block.matchAll(/--([a-z-]+): (#[0-9a-f]{6});/g)].map(([, name, value]) => [name!, value!]));
}
const light = tokens(':root {');
const dark = tokens(":root[data-theme='dark'] {");
const sun = tokens(":root[data-theme='sun'] {");

describe.each([['light', light], ['dark', { ...light, ...dark }]])('the %s theme', (_, theme) => {
  test.each(['ink', 'quiet', 'dim'])('--%s can be read from six metres: 7:1', (name) => {
    expect(contrast(theme[name]!, theme['ground']!)).toBeGreaterThanOrEqual(7);
  });
  test.each(['work', 'attention', 'fastball'])('--%s can be told from the ground: 3:1', (name) => {
    expect(contrast(theme[name]!, theme['ground']!)).toBeGreaterThanOrEqual(3);
  });
  test('words on the colour of attention reach 4.5:1', () => {
    expect(contrast(theme['on-attention']!, theme['attention']!)).toBeGreaterThanOrEqual(4.5);
  });
});

describe('the theme for the sun', () => {
  test('leaves no colour of another theme', () => {
    expect(Object.keys(sun).sort()).toEqual(Object.keys(light).sort());
  });
  test.each(['ink', 'quiet', 'dim', 'line', 'fastball', 'work', 'attention'])('--%s is 7:1 on the ground and on what is raised', (name) => {
    expect(Math.min(contrast(sun[name]!, sun['ground']!), contrast(sun[name]!, sun['raised']!))).toBeGreaterThanOrEqual(7);
  });
  test('words on the colour of attention are 7:1 too', () => {
    expect(contrast(sun['on-attention']!, sun['attention']!)).toBeGreaterThanOrEqual(7);
  });
});

test('asking for dark gives the same theme as preferring it', () => {
  expect(tokens(":root:not([data-theme='light']) {")).toEqual(dark);
});

test('the two hues of data are Okabe and Ito’s', () => {
  // Okabe and Ito, "Color Universal Design" (2002, revised 2008): blue, vermilion, sky blue, orange. Values from memory.
  expect([light['work'], light['attention'], dark['work'], dark['attention']]).toEqual(['#0072b2', '#d55e00', '#56b4e9', '#e69f00']);
});
