import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const read = (folder: string): string[] => {
  const here = new URL(`../../web/${folder}/`, import.meta.url);
  return readdirSync(here).filter((name) => /\.tsx?$/.test(name)).map((name) => readFileSync(new URL(name, here), 'utf8'));
};

/** A picture is what draws into an element of its own; its parts draw into layers. */
const picturesIn = (source: string): string[] => [...source.matchAll(/export function (draw\w+)\(element: SVGSVGElement/g)].map(([, name]) => name!);

test('every picture of web/charts hangs in the gallery', () => {
  const pictures = read('charts').flatMap(picturesIn);
  const gallery = read('gallery').join('\n');
  expect(pictures.length).toBeGreaterThan(8);
  // The plane without its parts is the same picture.
  expect(pictures.filter((name) => name !== 'drawPlane' && !gallery.includes(`${name}(`))).toEqual([]);
});
