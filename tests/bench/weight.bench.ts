import { readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { report } from './measure.ts';

const BUILT = fileURLToPath(new URL('../../dist/web/', import.meta.url));
const PAGE = 'index.html';

/** One file of the build, and what it cannot run without. */
interface Built {
  readonly file: string;
  readonly imports?: readonly string[];
  /** What it fetches behind itself, or once that is asked for. */
  readonly dynamicImports?: readonly string[];
}
const manifest = JSON.parse(readFileSync(path.join(BUILT, '.vite', 'manifest.json'), 'utf8')) as Readonly<Record<string, Built>>;

function closure(name: string, found = new Set<string>()): Set<string> {
  const built = manifest[name];
  if (built === undefined) throw new Error(`The build has no ${name}.`);
  if (found.has(name)) return found;
  found.add(name);
  for (const needed of built.imports ?? []) closure(needed, found);
  return found;
}

/** Bytes of JavaScript, gzipped file by file as a server sends them, that a screen loads before it can show anything. */
function weightOf(screen: string): number {
  return sizeOf(new Set([...closure(PAGE), ...closure(screen)]));
}

/** The same with everything that this screen ever fetches. */
function wholeWeightOf(screen: string): number {
  return sizeOf(new Set([PAGE, screen, ...(manifest[screen]?.dynamicImports ?? [])].flatMap((name) => [...closure(name)])));
}

function sizeOf(files: ReadonlySet<string>): number {
  return [...files].reduce((sum, name) => sum + gzipSync(readFileSync(path.join(BUILT, manifest[name]!.file))).length, 0);
}

test.each([
  ['Wall', 'wall/wall.tsx', 150_000],
  ['Glance', 'glance/glance.tsx', 60_000],
] as const)('the JavaScript of %s is small', (name, screen, most) => {
  const bytes = weightOf(screen);
  report(`JavaScript of ${name}: ${(bytes / 1000).toFixed(1)} kB gzipped, of at most ${most / 1000} kB, ${(wholeWeightOf(screen) / 1000).toFixed(1)} kB with what is fetched later`);
  expect(bytes).toBeLessThan(most);
});
