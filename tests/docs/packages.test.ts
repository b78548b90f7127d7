import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

interface Package {
  readonly integrity?: string;
  readonly hasInstallScript?: boolean;
}

const lock = JSON.parse(readFileSync(new URL('../../package-lock.json', import.meta.url), 'utf8')) as { readonly packages: Record<string, Package> };
/** Without the first, which is this project. */
const packages = Object.entries(lock.packages).filter(([place]) => place !== '');

test('every package is held to the very content that was locked, and none runs a program when it is installed', () => {
  expect(packages.length).toBeGreaterThan(100);
  expect(packages.filter(([, { integrity }]) => integrity?.startsWith('sha512-') !== true).map(([place]) => place)).toEqual([]);
  expect(packages.filter(([, { hasInstallScript }]) => hasInstallScript === true).map(([place]) => place)).toEqual([]);
});
